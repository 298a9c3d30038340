package oakum.portal.decision;

import java.sql.ResultSet;
import java.sql.Timestamp;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import oakum.portal.people.Role;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.RowMapper;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import tools.jackson.databind.json.JsonMapper;

/** Approvals and remarks; rows are only ever added, and an approval may once be withdrawn. */
@Repository
class ApprovalRows {
    private final JdbcClient jdbc;
    private final JsonMapper json;

    ApprovalRows(JdbcClient jdbc, JsonMapper json) {
        this.jdbc = jdbc;
        this.json = json;
    }

    void add(String houseId, Approval approval) {
        jdbc.sql(
                        "insert into decision.approval (id, house_id, code, role, person_id, person_name, given_at, copy_code,"
                                + " approved, exception_reason, failing) values (?, ?, ?, ?, ?, ?, ?, ?, ?::json, nullif(?, ''), ?)")
                .params(
                        approval.id(),
                        houseId,
                        approval.code(),
                        approval.role().name(),
                        approval.personId(),
                        approval.person(),
                        Timestamp.from(approval.at()),
                        approval.copyCode(),
                        json.writeValueAsString(approval.approved()),
                        Objects.requireNonNullElse(approval.exceptionReason(), ""),
                        approval.failing().toArray(new String[0]))
                .update();
    }

    void withdraw(UUID id, Instant at, String by, String reason) {
        jdbc.sql("update decision.approval set withdrawn_at = ?, withdrawn_by = ?, withdrawn_reason = ? where id = ?")
                .params(Timestamp.from(at), by, reason, id)
                .update();
    }

    /** Every approval of a house, the earliest first. */
    List<Approval> ofHouse(String houseId) {
        return jdbc.sql("select * from decision.approval where house_id = ? order by given_at, id")
                .params(houseId)
                .query(approval())
                .list();
    }

    private RowMapper<Approval> approval() {
        return (ResultSet row, int number) -> new Approval(
                row.getObject("id", UUID.class),
                row.getString("code"),
                Role.valueOf(row.getString("role")),
                row.getObject("person_id", UUID.class),
                row.getString("person_name"),
                row.getObject("given_at", OffsetDateTime.class).toInstant(),
                row.getString("copy_code"),
                json.readValue(row.getString("approved"), Approval.Content.class),
                row.getString("exception_reason"),
                List.of((String[]) row.getArray("failing").getArray()),
                instant(row.getObject("withdrawn_at", OffsetDateTime.class)),
                row.getString("withdrawn_by"),
                row.getString("withdrawn_reason"));
    }

    private static @Nullable Instant instant(@Nullable OffsetDateTime at) {
        return at == null ? null : at.toInstant();
    }

    /** Something said about a decision. */
    record Remark(UUID id, String code, String person, Instant at, String text) {}

    void add(String houseId, Remark remark, UUID personId) {
        jdbc.sql("insert into decision.remark (id, house_id, code, said_by, said_by_name, said_at, text)"
                        + " values (?, ?, ?, ?, ?, ?, ?)")
                .params(
                        remark.id(),
                        houseId,
                        remark.code(),
                        personId,
                        remark.person(),
                        Timestamp.from(remark.at()),
                        remark.text())
                .update();
    }

    /** Everything said about a house's decisions, the earliest first. */
    List<Remark> remarks(String houseId) {
        return jdbc.sql("select id, code, said_by_name, said_at, text from decision.remark where house_id = ?"
                        + " order by said_at, id")
                .params(houseId)
                .query((row, number) -> new Remark(
                        row.getObject("id", UUID.class),
                        row.getString("code"),
                        row.getString("said_by_name"),
                        row.getObject("said_at", OffsetDateTime.class).toInstant(),
                        row.getString("text")))
                .list();
    }
}
