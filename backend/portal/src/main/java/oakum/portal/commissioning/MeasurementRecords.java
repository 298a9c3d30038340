package oakum.portal.commissioning;

import static java.time.ZoneOffset.UTC;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import oakum.portal.commissioning.MeasurementShown.MeasurementSigned;
import oakum.portal.people.Caller;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Measurements and their signatures in the database; nothing in it is ever changed. */
@Repository
class MeasurementRecords {
    private static final String SELECT = """
            select m.*, s.role, s.person as signed_by, s.reason, s.at as signed_at
            from commissioning.measurement m left join commissioning.measurement_signature s on s.measurement_id = m.id
            where m.house_id = :house
            """;

    private final JdbcClient jdbc;
    private final JsonMapper json;

    MeasurementRecords(JdbcClient jdbc, JsonMapper json) {
        this.jdbc = jdbc;
        this.json = json;
    }

    /** A measurement as it is kept. */
    record Kept(
            UUID id,
            Sheet sheet,
            Occasion occasion,
            Instant takenAt,
            Instant receivedAt,
            String person,
            JsonNode sent,
            Outcome outcome,
            @Nullable MeasurementSigned signature) {}

    /** Keeps a measurement; false where that id is already known. */
    boolean insert(
            String houseId, Sheet sheet, Taken taken, Record sent, Outcome outcome, Caller caller, Instant receivedAt) {
        return jdbc.sql("""
                        insert into commissioning.measurement
                            (id, house_id, sheet, occasion, taken_at, received_at, person_id, person, sent, outcome)
                        values (:id, :house, :sheet, :occasion, :takenAt, :receivedAt, :personId, :person,
                            cast(:sent as jsonb), cast(:outcome as jsonb))
                        on conflict (id) do nothing
                        """)
                        .param("id", taken.clientId())
                        .param("house", houseId)
                        .param("sheet", sheet.key())
                        .param("occasion", taken.occasion().name())
                        .param("takenAt", taken.takenAt().atOffset(UTC))
                        .param("receivedAt", receivedAt.atOffset(UTC))
                        .param("personId", caller.personId())
                        .param("person", caller.displayName())
                        .param("sent", json.writeValueAsString(sent))
                        .param("outcome", json.writeValueAsString(outcome))
                        .update()
                == 1;
    }

    /** Whether the measurement of that id is this very one. */
    boolean same(String houseId, Sheet sheet, UUID id, Record sent) {
        return jdbc.sql("""
                        select true from commissioning.measurement
                        where id = :id and house_id = :house and sheet = :sheet and sent = cast(:sent as jsonb)
                        """)
                .param("id", id)
                .param("house", houseId)
                .param("sheet", sheet.key())
                .param("sent", json.writeValueAsString(sent))
                .query(Boolean.class)
                .optional()
                .isPresent();
    }

    /** Every measurement of a house, latest first. */
    List<Kept> all(String houseId) {
        return jdbc.sql(SELECT + " order by m.taken_at desc, m.received_at desc")
                .param("house", houseId)
                .query((row, n) -> kept(row))
                .list();
    }

    Optional<Kept> find(String houseId, UUID id) {
        return jdbc.sql(SELECT + " and m.id = :id")
                .param("house", houseId)
                .param("id", id)
                .query((row, n) -> kept(row))
                .optional();
    }

    /** Signs; false where it is signed already. */
    boolean sign(UUID id, String role, String reason, Caller caller, Instant at) {
        return jdbc.sql("""
                        insert into commissioning.measurement_signature
                            (measurement_id, role, person_id, person, reason, at)
                        values (:id, :role, :personId, :person, :reason, :at)
                        on conflict (measurement_id) do nothing
                        """)
                        .param("id", id)
                        .param("role", role)
                        .param("personId", caller.personId())
                        .param("person", caller.displayName())
                        .param("reason", reason)
                        .param("at", at.atOffset(UTC))
                        .update()
                == 1;
    }

    private Kept kept(ResultSet row) throws SQLException {
        OffsetDateTime signedAt = row.getObject("signed_at", OffsetDateTime.class);
        return new Kept(
                row.getObject("id", UUID.class),
                Sheet.of(row.getString("sheet")),
                Occasion.valueOf(row.getString("occasion")),
                row.getObject("taken_at", OffsetDateTime.class).toInstant(),
                row.getObject("received_at", OffsetDateTime.class).toInstant(),
                row.getString("person"),
                json.readTree(row.getString("sent")),
                json.readValue(row.getString("outcome"), Outcome.class),
                signedAt == null
                        ? null
                        : new MeasurementSigned(
                                row.getString("role"),
                                row.getString("signed_by"),
                                row.getString("reason"),
                                signedAt.toInstant()));
    }
}
