package oakum.portal.site;

import static java.time.ZoneOffset.UTC;

import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import oakum.physics.calculation.Unit;
import oakum.portal.people.Caller;
import oakum.portal.people.Role;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Cover checks, their rows, answers and signatures in the database. */
@Repository
class CoverCheckRecords {
    private final JdbcClient jdbc;

    CoverCheckRecords(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** The head of a check. */
    record Head(String code, String title, String coveredBy, List<String> dependsOn, List<SafetyCaution> cautions) {}

    record Signature(Role role, String copyCode, String person, Instant at) {}

    List<Head> heads(String houseId) {
        return jdbc.sql("""
                        select * from site.cover_check where house_id = :house
                        order by substring(code from 2)::int
                        """)
                .param("house", houseId)
                .query((row, n) -> head(row))
                .list();
    }

    Optional<Head> head(String houseId, String code) {
        return jdbc.sql("select * from site.cover_check where house_id = :house and code = :code")
                .param("house", houseId)
                .param("code", code)
                .query((row, n) -> head(row))
                .optional();
    }

    /** Holds the check until the transaction ends, so that answers and signatures come one after another. */
    boolean lock(String houseId, String code) {
        return jdbc.sql("select true from site.cover_check where house_id = :house and code = :code for update")
                .param("house", houseId)
                .param("code", code)
                .query(Boolean.class)
                .optional()
                .isPresent();
    }

    /** Makes a check from its template; false where the house has it already. */
    boolean insert(String houseId, CoverCheckTemplate template, String person, Instant at) {
        int made = jdbc.sql("""
                        insert into site.cover_check
                            (house_id, code, title, covered_by, depends_on, cautions, made_by, made_at)
                        values (:house, :code, :title, :coveredBy, string_to_array(:dependsOn, '|'),
                            string_to_array(:cautions, '|'), :person, :at)
                        on conflict do nothing
                        """)
                .param("house", houseId)
                .param("code", template.code())
                .param("title", template.title())
                .param("coveredBy", template.coveredBy())
                .param("dependsOn", String.join("|", template.dependsOn()))
                .param("cautions", names(template.cautions()))
                .param("person", person)
                .param("at", at.atOffset(UTC))
                .update();
        if (made == 1) {
            template.rows().forEach(row -> insert(houseId, template.code(), row));
        }
        return made == 1;
    }

    /** Adds a row; false where the check has one of that id. */
    boolean insert(String houseId, String code, CheckRow row) {
        CheckRow.Asked number = row.number();
        return jdbc.sql("""
                        insert into site.cover_check_row
                            (house_id, code, id, template_row, place, position, look_at, accept_when, because, quantity,
                             unit, limit_min, limit_max, lowest, highest, photo_rule, seen_by, signed_by, source)
                        values (:house, :code, :id, :templateRow, :place, :position, :lookAt, :acceptWhen, :because,
                            :quantity, :unit, :min, :max, :lowest, :highest, :photoRule,
                            string_to_array(:seenBy, '|'), :signedBy, :source)
                        on conflict do nothing
                        """)
                        .param("house", houseId)
                        .param("code", code)
                        .param("id", row.id())
                        .param("templateRow", row.templateRow())
                        .param("place", row.place())
                        .param("position", row.position())
                        .param("lookAt", row.lookAt())
                        .param("acceptWhen", row.acceptWhen())
                        .param("because", row.because())
                        .param("quantity", number == null ? null : number.quantity())
                        .param("unit", number == null ? null : number.unit().name())
                        .param("min", number == null ? null : number.min())
                        .param("max", number == null ? null : number.max())
                        .param("lowest", number == null ? null : number.lowest())
                        .param("highest", number == null ? null : number.highest())
                        .param("photoRule", row.photoRule().name())
                        .param("seenBy", names(row.seenBy()))
                        .param("signedBy", row.signedBy().name())
                        .param("source", row.source())
                        .update()
                == 1;
    }

    List<CheckRow> rows(String houseId, String code) {
        return jdbc.sql("""
                        select * from site.cover_check_row where house_id = :house and code = :code
                        order by position, template_row, place
                        """)
                .param("house", houseId)
                .param("code", code)
                .query((row, n) -> row(row))
                .list();
    }

    /** Every answer of a check by the id of its row, oldest first. */
    Map<String, List<GivenAnswer>> answers(String houseId, String code) {
        return jdbc.sql("""
                        select a.*, c.reason, c.person as accepted_by, c.at as accepted_at,
                            (select array_agg(p.photo_id order by p.position)
                             from site.row_answer_photo p where p.answer_id = a.id) as photos
                        from site.row_answer a left join site.row_acceptance c on c.answer_id = a.id
                        where a.house_id = :house and a.code = :code
                        order by a.round, least(a.taken_at, a.received_at), a.received_at, a.id
                        """).param("house", houseId).param("code", code).query((row, n) -> answer(row)).list().stream()
                .collect(Collectors.groupingBy(GivenAnswer::rowId));
    }

    /** Keeps an answer; false where that id is already known, of this house or another. */
    boolean insert(String houseId, String code, GivenAnswer answer) {
        int kept = jdbc.sql("""
                        insert into site.row_answer
                            (id, house_id, code, row_id, round, answer, judged, value, note, repeat_of, taken_at,
                             received_at, person_id, person)
                        values (:id, :house, :code, :row, :round, :answer, :judged, :value, :note, :repeatOf, :takenAt,
                            :receivedAt, :personId, :person)
                        on conflict (id) do nothing
                        """)
                .param("id", answer.id())
                .param("house", houseId)
                .param("code", code)
                .param("row", answer.rowId())
                .param("round", answer.round())
                .param("answer", answer.answer().name())
                .param("judged", answer.judged().name())
                .param("value", answer.value())
                .param("note", answer.note())
                .param("repeatOf", answer.repeatOf())
                .param("takenAt", answer.takenAt().atOffset(UTC))
                .param("receivedAt", answer.receivedAt().atOffset(UTC))
                .param("personId", answer.personId())
                .param("person", answer.person())
                .update();
        if (kept == 0) {
            return false;
        }
        int position = 0;
        for (UUID photo : answer.photos()) {
            jdbc.sql("insert into site.row_answer_photo (answer_id, photo_id, position) values (:answer, :photo, :n)")
                    .param("answer", answer.id())
                    .param("photo", photo)
                    .param("n", position++)
                    .update();
        }
        return true;
    }

    void accept(UUID answerId, String reason, Caller caller, Instant at) {
        jdbc.sql("""
                        insert into site.row_acceptance (answer_id, reason, person_id, person, at)
                        values (:answer, :reason, :personId, :person, :at)
                        on conflict (answer_id) do nothing
                        """)
                .param("answer", answerId)
                .param("reason", reason)
                .param("personId", caller.personId())
                .param("person", caller.displayName())
                .param("at", at.atOffset(UTC))
                .update();
    }

    List<Signature> signatures(String houseId, String code) {
        return jdbc.sql("select * from site.cover_check_signature where house_id = :house and code = :code order by at")
                .param("house", houseId)
                .param("code", code)
                .query((row, n) -> new Signature(
                        Role.valueOf(row.getString("role")),
                        row.getString("copy_code"),
                        row.getString("person"),
                        instant(row, "at")))
                .list();
    }

    /** Signs; false where this role has signed the same already. */
    boolean sign(String houseId, String code, Role role, String copyCode, Caller caller, Instant at) {
        return jdbc.sql("""
                        insert into site.cover_check_signature (house_id, code, role, copy_code, person_id, person, at)
                        values (:house, :code, :role, :copyCode, :personId, :person, :at)
                        on conflict do nothing
                        """)
                        .param("house", houseId)
                        .param("code", code)
                        .param("role", role.name())
                        .param("copyCode", copyCode)
                        .param("personId", caller.personId())
                        .param("person", caller.displayName())
                        .param("at", at.atOffset(UTC))
                        .update()
                == 1;
    }

    private static Head head(ResultSet row) throws SQLException {
        return new Head(
                row.getString("code"),
                row.getString("title"),
                row.getString("covered_by"),
                texts(row.getArray("depends_on")),
                texts(row.getArray("cautions")).stream()
                        .map(SafetyCaution::valueOf)
                        .toList());
    }

    private static CheckRow row(ResultSet row) throws SQLException {
        String unit = row.getString("unit");
        CheckRow.Asked number = unit == null
                ? null
                : new CheckRow.Asked(
                        row.getString("quantity"),
                        Unit.valueOf(unit),
                        row.getObject("limit_min", Double.class),
                        row.getObject("limit_max", Double.class),
                        row.getDouble("lowest"),
                        row.getDouble("highest"));
        return new CheckRow(
                row.getString("id"),
                row.getString("template_row"),
                row.getString("place"),
                row.getInt("position"),
                row.getString("look_at"),
                row.getString("accept_when"),
                row.getString("because"),
                number,
                PhotoRule.valueOf(row.getString("photo_rule")),
                texts(row.getArray("seen_by")).stream().map(SeenBy::valueOf).toList(),
                Role.valueOf(row.getString("signed_by")),
                row.getString("source"));
    }

    private static GivenAnswer answer(ResultSet row) throws SQLException {
        String reason = row.getString("reason");
        return new GivenAnswer(
                row.getObject("id", UUID.class),
                row.getString("row_id"),
                row.getInt("round"),
                RowAnswer.valueOf(row.getString("answer")),
                RowAnswer.valueOf(row.getString("judged")),
                row.getObject("value", Double.class),
                row.getString("note"),
                row.getObject("repeat_of", UUID.class),
                instant(row, "taken_at"),
                instant(row, "received_at"),
                row.getObject("person_id", UUID.class),
                row.getString("person"),
                uuids(row.getArray("photos")),
                reason == null
                        ? null
                        : new GivenAnswer.Acceptance(
                                reason, row.getString("accepted_by"), instant(row, "accepted_at")));
    }

    static Instant instant(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }

    private static String names(List<? extends Enum<?>> values) {
        return values.stream().map(Enum::name).collect(Collectors.joining("|"));
    }

    private static List<String> texts(Array array) throws SQLException {
        return List.of((String[]) array.getArray());
    }

    private static List<UUID> uuids(@Nullable Array array) throws SQLException {
        return array == null
                ? List.of()
                : Stream.of((Object[]) array.getArray()).map(UUID.class::cast).toList();
    }
}
