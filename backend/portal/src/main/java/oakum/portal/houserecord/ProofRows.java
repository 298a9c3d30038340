package oakum.portal.houserecord;

import java.sql.ResultSet;
import java.sql.Timestamp;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.RowMapper;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import tools.jackson.databind.json.JsonMapper;

/** The issues of proofs; rows are only ever added. */
@Repository
class ProofRows {
    private static final String COLUMNS = "key, issue, content, made_by, made_by_name, made_at, reason";

    private final JdbcClient jdbc;
    private final JsonMapper json;

    ProofRows(JdbcClient jdbc, JsonMapper json) {
        this.jdbc = jdbc;
        this.json = json;
    }

    void add(String houseId, Proof proof) {
        jdbc.sql("insert into houserecord.proof_issue (house_id, " + COLUMNS
                        + ") values (?, ?, ?, ?::json, ?, ?, ?, ?)")
                .params(
                        houseId,
                        proof.key(),
                        proof.issue(),
                        json.writeValueAsString(proof.content()),
                        proof.madeById(),
                        proof.madeBy(),
                        Timestamp.from(proof.madeAt()),
                        proof.reason())
                .update();
    }

    /** The latest issue of each proof, in the order in which the proofs were first made. */
    Map<String, Proof> latest(String houseId) {
        Map<String, Proof> latest = new LinkedHashMap<>();
        jdbc.sql("select " + COLUMNS + " from houserecord.proof_issue p where house_id = :house and issue ="
                        + " (select max(issue) from houserecord.proof_issue where house_id = :house and key = p.key)"
                        + " order by (select made_at from houserecord.proof_issue"
                        + " where house_id = :house and key = p.key and issue = 1), key")
                .param("house", houseId)
                .query(row())
                .list()
                .forEach(proof -> latest.put(proof.key(), proof));
        return latest;
    }

    /** All issues of one proof, the latest first. */
    List<Proof> all(String houseId, String key) {
        return jdbc.sql("select " + COLUMNS
                        + " from houserecord.proof_issue where house_id = ? and key = ? order by issue desc")
                .params(houseId, key)
                .query(row())
                .list();
    }

    /** All issues of all proofs, the latest first. */
    List<Proof> all(String houseId) {
        return jdbc.sql("select " + COLUMNS
                        + " from houserecord.proof_issue where house_id = ? order by made_at desc, key, issue desc")
                .params(houseId)
                .query(row())
                .list();
    }

    private RowMapper<Proof> row() {
        return (ResultSet row, int number) -> new Proof(
                row.getString("key"),
                row.getInt("issue"),
                json.readValue(row.getString("content"), Proof.Content.class),
                row.getObject("made_by", UUID.class),
                row.getString("made_by_name"),
                row.getObject("made_at", OffsetDateTime.class).toInstant(),
                row.getString("reason"));
    }
}
