package oakum.portal.decision;

import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.io.Serializable;
import java.time.Instant;

/** A decision of one house. What people write of it is one JSON document: it is read and approved as a whole. */
@Entity
@Table(schema = "decision", name = "decision")
class Decision {
    /** House and code. */
    @Embeddable
    record Id(String houseId, String code) implements Serializable {}

    @EmbeddedId
    private Id id;

    private String content;

    @Version
    private Long version;

    private Instant madeAt;

    /** For the database library. */
    @SuppressWarnings("NullAway.Init")
    protected Decision() {}

    @SuppressWarnings("NullAway.Init") // the database library counts the version
    Decision(String houseId, String code, String content, Instant madeAt) {
        this.id = new Id(houseId, code);
        this.content = content;
        this.madeAt = madeAt;
    }

    String code() {
        return id.code();
    }

    String content() {
        return content;
    }

    void write(String changed) {
        content = changed;
    }

    long version() {
        return version;
    }

    Instant madeAt() {
        return madeAt;
    }
}
