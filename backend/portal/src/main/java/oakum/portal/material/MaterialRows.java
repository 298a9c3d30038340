package oakum.portal.material;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import oakum.physics.material.MaterialInput;
import oakum.physics.material.OwnMaterial;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import tools.jackson.databind.json.JsonMapper;

/** Own materials in the database. */
@Repository
class MaterialRows {
    private static final String SHOWN =
            "select id, typed, added_by, added_at, superseded_by, withdrawn_by, withdrawn_at from material.own ";

    private final JdbcClient jdbc;
    private final JsonMapper json;

    MaterialRows(JdbcClient jdbc, JsonMapper json) {
        this.jdbc = jdbc;
        this.json = json;
    }

    /** An own material as it is kept. */
    record Kept(
            String id,
            MaterialInput typed,
            String addedBy,
            Instant addedAt,
            @Nullable String supersededBy,
            @Nullable String withdrawnBy,
            @Nullable Instant withdrawnAt) {
        boolean offered() {
            return supersededBy == null && withdrawnAt == null;
        }
    }

    /** Until the transaction ends nobody else adds or withdraws a material of this name. */
    void lock(String name) {
        jdbc.sql("select pg_advisory_xact_lock(hashtextextended('material ' || ?, 0))")
                .param(name)
                .query((row, n) -> n)
                .list();
    }

    /** Offers none of a name but the one of this id, which may be added after that. */
    void supersede(String name, String id) {
        jdbc.sql(
                        "update material.own set superseded_by = :id where name = :name and id <> :id and superseded_by is null")
                .param("id", id)
                .param("name", name)
                .update();
    }

    void add(OwnMaterial own, String by, Instant at) {
        jdbc.sql("""
                        insert into material.own (id, name, sort_key, typed, added_by, added_at)
                        values (:id, :name, :key, :typed::jsonb, :by, :at)""")
                .param("id", own.material().id())
                .param("name", own.name())
                .param("key", sortKey(own.material().id(), own.typed()))
                .param("typed", json.writeValueAsString(own.typed()))
                .param("by", by)
                .param("at", Timestamp.from(at))
                .update();
    }

    /** Offers a material again that was superseded or withdrawn. */
    void offer(String id) {
        jdbc.sql("""
                        update material.own set superseded_by = null, withdrawn_by = null, withdrawn_at = null
                        where id = ?""").param(id).update();
    }

    static String sortKey(String id, MaterialInput typed) {
        return typed.label().toLowerCase(Locale.ROOT) + " " + id;
    }

    void withdraw(String id, String by, Instant at) {
        jdbc.sql("""
                        update material.own set withdrawn_by = :by, withdrawn_at = :at
                        where id = :id and withdrawn_at is null""")
                .param("by", by)
                .param("at", Timestamp.from(at))
                .param("id", id)
                .update();
    }

    Optional<Kept> find(String id) {
        return jdbc.sql(SHOWN + "where id = ?").param(id).query(this::kept).optional();
    }

    /** By name, from the one after a sort key on. */
    List<Kept> list(@Nullable String after, boolean all, int most) {
        return jdbc.sql(SHOWN + """
                        where sort_key > :after
                        and (:all or (superseded_by is null and withdrawn_at is null))
                        order by sort_key limit :most""")
                .param("after", after == null ? "" : after)
                .param("all", all)
                .param("most", most)
                .query(this::kept)
                .list();
    }

    private Kept kept(ResultSet row, int n) throws SQLException {
        Timestamp withdrawn = row.getTimestamp("withdrawn_at");
        return new Kept(
                row.getString("id"),
                json.readValue(row.getString("typed"), MaterialInput.class),
                row.getString("added_by"),
                row.getTimestamp("added_at").toInstant(),
                row.getString("superseded_by"),
                row.getString("withdrawn_by"),
                withdrawn == null ? null : withdrawn.toInstant());
    }
}
