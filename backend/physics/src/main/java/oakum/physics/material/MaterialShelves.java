package oakum.physics.material;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;

/**
 * Every shelf of own materials that is open in this process. The id of an own material carries its content, so that a
 * calculation that looks one up stays a function of its inputs: which shelf holds it, and when that was opened, decides
 * only whether it is found.
 */
public final class MaterialShelves {
    private static final List<MaterialShelf> OPEN = new CopyOnWriteArrayList<>();

    private MaterialShelves() {}

    /** Opens a shelf; shelves are asked in the order in which they were opened, after the bundled materials. */
    public static void open(MaterialShelf shelf) {
        OPEN.add(shelf);
    }

    /** Closes a shelf; one that is not open is passed over. */
    public static void close(MaterialShelf shelf) {
        OPEN.remove(shelf);
    }

    /**
     * The own material of this id.
     *
     * @throws IllegalStateException where a shelf answers with another material than was asked for
     */
    static Optional<Material> find(String id) {
        if (!OwnMaterial.isId(id)) {
            return Optional.empty();
        }
        Optional<Material> found =
                OPEN.stream().flatMap(shelf -> shelf.find(id).stream()).findFirst();
        found.ifPresent(material -> {
            String is = OwnMaterial.of(OwnMaterial.typed(material)).material().id();
            if (!is.equals(id)) {
                throw new IllegalStateException("A shelf gave " + is + " where " + id + " was asked for.");
            }
        });
        return found;
    }
}
