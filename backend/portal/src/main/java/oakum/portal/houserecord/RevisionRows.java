package oakum.portal.houserecord;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.RowMapper;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import tools.jackson.databind.json.JsonMapper;

/** The revisions of parts; rows are only ever added. */
@Repository
class RevisionRows {
    private static final String COLUMNS = "part, revision, document, made_by, made_by_name, made_at, reason";

    private final JdbcClient jdbc;
    private final JsonMapper json;

    RevisionRows(JdbcClient jdbc, JsonMapper json) {
        this.jdbc = jdbc;
        this.json = json;
    }

    void add(String houseId, Revision revision) {
        jdbc.sql("insert into houserecord.part_revision (house_id, " + COLUMNS
                        + ") values (?, ?, ?, ?::jsonb, ?, ?, ?, ?)")
                .params(
                        houseId,
                        revision.part(),
                        revision.revision(),
                        json.writeValueAsString(revision.document()),
                        revision.madeById(),
                        revision.madeBy(),
                        Timestamp.from(revision.madeAt()),
                        revision.reason())
                .update();
    }

    /** The latest revision of each part that has one. */
    Map<PartKind, Revision> latest(String houseId) {
        Map<PartKind, Revision> latest = new EnumMap<>(PartKind.class);
        jdbc.sql(
                        "select " + COLUMNS + " from houserecord.part_revision r where house_id = :house and revision ="
                                + " (select max(revision) from houserecord.part_revision where house_id = :house and part = r.part)")
                .param("house", houseId)
                .query(row())
                .list()
                .forEach(revision -> latest.put(kind(revision.part()), revision));
        return latest;
    }

    /** The latest revision of one part. */
    Optional<Revision> latest(String houseId, PartKind kind) {
        return jdbc.sql("select " + COLUMNS + " from houserecord.part_revision where house_id = ? and part = ?"
                        + " order by revision desc limit 1")
                .params(houseId, kind.key())
                .query(row())
                .optional();
    }

    Optional<Revision> find(String houseId, PartKind kind, int revision) {
        return jdbc.sql("select " + COLUMNS
                        + " from houserecord.part_revision where house_id = ? and part = ? and revision = ?")
                .params(houseId, kind.key(), revision)
                .query(row())
                .optional();
    }

    /** All revisions of one part, the latest first. */
    List<Revision> all(String houseId, PartKind kind) {
        return jdbc.sql("select " + COLUMNS + " from houserecord.part_revision where house_id = ? and part = ?"
                        + " order by revision desc")
                .params(houseId, kind.key())
                .query(row())
                .list();
    }

    /** All revisions of all parts, the latest first. */
    List<Revision> all(String houseId) {
        return jdbc.sql("select " + COLUMNS + " from houserecord.part_revision where house_id = ?"
                        + " order by made_at desc, part, revision desc")
                .params(houseId)
                .query(row())
                .list();
    }

    private RowMapper<Revision> row() {
        return (ResultSet row, int number) -> new Revision(
                row.getString("part"),
                row.getInt("revision"),
                document(row),
                row.getObject("made_by", UUID.class),
                row.getString("made_by_name"),
                row.getObject("made_at", OffsetDateTime.class)
                        .withOffsetSameInstant(ZoneOffset.UTC)
                        .toInstant(),
                row.getString("reason"));
    }

    private Record document(ResultSet row) throws SQLException {
        return StrictReader.kept(kind(row.getString("part")), json.readTree(row.getString("document")));
    }

    private static PartKind kind(String part) {
        return PartKind.find(part).orElseThrow(() -> new IllegalStateException("no such part: " + part));
    }
}
