package oakum.portal.material;

import jakarta.annotation.PostConstruct;
import jakarta.annotation.PreDestroy;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import oakum.physics.material.Material;
import oakum.physics.material.MaterialShelf;
import oakum.physics.material.MaterialShelves;
import oakum.physics.material.OwnMaterial;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/**
 * The firm's own materials as calculations look them up; the last used are held. An id always means the same values, so
 * what is held never grows old; what is not found is asked for again, another instance may have added it.
 */
@Component
class OwnShelf implements MaterialShelf {
    private static final int MOST_HELD = 256;

    private final MaterialRows rows;
    private final Map<String, Material> held = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Material> eldest) {
            return size() > MOST_HELD;
        }
    };

    OwnShelf(MaterialRows rows) {
        this.rows = rows;
    }

    @PostConstruct
    void open() {
        MaterialShelves.open(this);
    }

    @PreDestroy
    void close() {
        MaterialShelves.close(this);
    }

    @Override
    public Optional<Material> find(String id) {
        @Nullable Material known;
        synchronized (held) {
            known = held.get(id);
        }
        if (known != null) {
            return Optional.of(known);
        }
        Optional<Material> read =
                rows.find(id).map(kept -> OwnMaterial.of(kept.typed()).material());
        read.ifPresent(material -> {
            synchronized (held) {
                held.put(id, material);
            }
        });
        return read;
    }
}
