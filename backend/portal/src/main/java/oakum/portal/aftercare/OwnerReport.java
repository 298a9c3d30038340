package oakum.portal.aftercare;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What an owner told of a house, and what the office answered.
 *
 * @param inHouse where in the house; may be empty
 * @param photos ids of photos of this house
 * @param slot the offered time that was chosen, or null
 * @param preference when it suits, in the owner's words; may be empty
 * @param answerBy the day by which the office answers: the next working day by the calendar of the house
 * @param level {@code ANSWER} while it waits for one, else {@code NOTE}
 * @param overdue whether it waits although that day is over
 * @param visit the visit that was made for it, or null
 * @param actions what this person may do now: {@code answer-report}
 */
public record OwnerReport(
        UUID id,
        String house,
        String what,
        String inHouse,
        List<UUID> photos,
        OfferedSlot.@Nullable ChosenSlot slot,
        @Nullable String slotLabel,
        String preference,
        String reportedBy,
        Instant reportedAt,
        LocalDate answerBy,
        Level level,
        boolean overdue,
        @Nullable String answer,
        @Nullable String answeredBy,
        @Nullable Instant answeredAt,
        @Nullable UUID visit,
        List<String> actions) {

    /** How much it asks of the office; an owner's letter asks for an answer. */
    public enum Level {
        ANSWER,
        NOTE
    }
}
