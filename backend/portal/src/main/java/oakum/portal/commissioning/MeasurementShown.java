package oakum.portal.commissioning;

import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import oakum.physics.calculation.Caution;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * One measurement, as it was sent and what it showed that day.
 *
 * @param sent as it came
 * @param outcome compared with the design of that day; never computed anew
 * @param signature null while nobody signed it
 * @param actions what this person may do now
 */
public record MeasurementShown(
        UUID id,
        String sheet,
        Occasion occasion,
        String occasionLabel,
        Instant takenAt,
        Instant receivedAt,
        String person,

        @Schema(oneOf = {TightnessSent.class, FilterDropSent.class, HousePressureSent.class})
        JsonNode sent,

        Outcome outcome,
        @Nullable MeasurementSigned signature,
        List<Caution> cautions,
        List<String> actions) {

    /**
     * Who accepted it.
     *
     * @param reason why it is accepted although it does not pass; empty where it passes
     */
    public record MeasurementSigned(String role, String person, String reason, Instant at) {}
}
