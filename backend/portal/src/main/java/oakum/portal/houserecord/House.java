package oakum.portal.houserecord;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;

/** A house: the lock under which everything of it changes. Its name and measures are a part like the others. */
@Entity
@Table(schema = "houserecord", name = "house")
class House {
    @Id
    private String id;

    private int measuresRevision = 1;

    @Version
    private Long version;

    private Instant madeAt;

    /** For the database library. */
    @SuppressWarnings("NullAway.Init")
    protected House() {}

    @SuppressWarnings("NullAway.Init") // the database library counts the version
    House(String id, Instant madeAt) {
        this.id = id;
        this.madeAt = madeAt;
    }

    String id() {
        return id;
    }

    long version() {
        return version;
    }

    void measured(int revision) {
        measuresRevision = revision;
    }

    int measuresRevision() {
        return measuresRevision;
    }

    Instant madeAt() {
        return madeAt;
    }
}
