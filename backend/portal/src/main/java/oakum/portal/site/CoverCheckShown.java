package oakum.portal.site;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import oakum.physics.calculation.Caution;
import oakum.portal.calculation.FieldJson.UnitJson;
import oakum.portal.people.Role;
import org.jspecify.annotations.Nullable;

/**
 * A cover check with everything on it.
 *
 * @param copyCode six digits that stand for every counting answer as shown; sent back when signing
 * @param stops the rows that keep it shut, each with its reason
 * @param lapsed decisions behind it whose approval no longer stands
 * @param waitsFor whose signature opens it, null when it is signed
 * @param actions what this person may do now
 */
public record CoverCheckShown(
        String houseId,
        String code,
        int number,
        String title,
        String coveredBy,
        CoverCheckState state,
        String stateLabel,
        String copyCode,
        int rowCount,
        int answeredCount,
        List<CheckRowShown> rows,
        List<RowStop> stops,
        List<LapsedApproval> lapsed,
        List<CheckSignature> signatures,
        @Nullable Role waitsFor,
        List<Caution> cautions,
        List<String> actions) {

    /**
     * One row.
     *
     * @param number the value it asks for, or null
     * @param counting the answer that counts, or null where nobody has looked
     * @param answers every answer ever given, oldest first
     * @param stop why it keeps the check shut, or null
     */
    public record CheckRowShown(
            String id,
            String templateRow,
            @Nullable String place,
            String lookAt,
            String acceptWhen,
            String because,
            @Nullable NumberAsked number,
            PhotoRule photoRule,
            String photoLabel,
            int leastPhotos,
            List<String> seenBy,
            Role signedBy,
            String source,
            @Nullable RowAnswerShown counting,
            List<RowAnswerShown> answers,
            @Nullable String stop) {}

    /**
     * The number that a row asks for, in SI.
     *
     * @param min the least value that is right, or null
     * @param max the greatest value that is right, or null
     * @param lowest below it the answer is refused as mistyped
     * @param highest above it likewise
     */
    public record NumberAsked(
            String quantity,
            UnitJson unit,
            @Nullable Double min,
            @Nullable Double max,
            double lowest,
            double highest) {}

    /**
     * One answer.
     *
     * @param judged what counts; a number beyond its limit is not right whatever key was pressed
     * @param round 1 for the first look, higher for later looks
     * @param counts whether it is the one that counts
     * @param at when it was given
     */
    public record RowAnswerShown(
            UUID id,
            int round,
            RowAnswer answer,
            RowAnswer judged,
            String judgedLabel,
            boolean counts,
            @Nullable Double value,
            String note,
            Instant at,
            Instant receivedAt,
            String person,
            List<UUID> photos,
            @Nullable RowAccepted accepted) {}

    /** The principal lets a row pass as it is. */
    public record RowAccepted(String reason, String person, Instant at) {}

    /**
     * A signature.
     *
     * @param stands whether what was signed is still what the rows say
     */
    public record CheckSignature(Role role, String person, Instant at, String copyCode, boolean stands) {}
}
