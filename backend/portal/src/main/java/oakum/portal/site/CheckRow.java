package oakum.portal.site;

import java.util.List;
import oakum.physics.calculation.Unit;
import oakum.portal.people.Role;
import org.jspecify.annotations.Nullable;

/**
 * One line of a cover check as the house has it.
 *
 * @param id within the check
 * @param templateRow the row of the template; rows that repeat by place share it
 * @param place where in the house, or null for a row that does not repeat
 * @param lookAt the question
 * @param acceptWhen the whole sentence that must be true
 * @param because what goes wrong otherwise, a whole sentence
 * @param number the value that the row asks for, or null
 * @param signedBy whose signature the row needs: site lead or principal
 */
record CheckRow(
        String id,
        String templateRow,
        @Nullable String place,
        int position,
        String lookAt,
        String acceptWhen,
        String because,
        @Nullable Asked number,
        PhotoRule photoRule,
        List<SeenBy> seenBy,
        Role signedBy,
        String source) {

    /**
     * A number that a row asks for.
     *
     * @param quantity what is read
     * @param unit its SI unit
     * @param min the least value that is right, or null
     * @param max the greatest value that is right, or null
     * @param lowest the least value that can have been read; below it somebody mistyped
     * @param highest the greatest value that can have been read
     */
    record Asked(
            String quantity,
            Unit unit,
            @Nullable Double min,
            @Nullable Double max,
            double lowest,
            double highest) {
        /** The limit that a value breaks, or null where it is within both. */
        @Nullable
        Double brokenBy(double value) {
            if (max != null && value > max) {
                return max;
            }
            return min != null && value < min ? min : null;
        }
    }

    /** The answer that counts whatever key was pressed: a number beyond its limit is never right. */
    RowAnswer judged(RowAnswer pressed, @Nullable Double value) {
        boolean beyond = number != null && value != null && number.brokenBy(value) != null;
        return pressed == RowAnswer.RIGHT && beyond ? RowAnswer.NOT_RIGHT : pressed;
    }

    CheckRow at(String newPlace, int newPosition) {
        return new CheckRow(
                idAt(templateRow, newPlace),
                templateRow,
                newPlace,
                newPosition,
                lookAt,
                acceptWhen,
                because,
                number,
                photoRule,
                seenBy,
                signedBy,
                source);
    }

    static String idAt(String templateRow, String place) {
        return templateRow + "-" + place.toLowerCase(java.util.Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    }
}
