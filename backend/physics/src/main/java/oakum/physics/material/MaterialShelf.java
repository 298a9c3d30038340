package oakum.physics.material;

import java.util.Optional;

/** Where a firm's own materials are kept. */
public interface MaterialShelf {
    /**
     * The material of this id.
     *
     * @param id as {@link OwnMaterial#of} gives it
     * @return empty where it is not kept here
     */
    Optional<Material> find(String id);
}
