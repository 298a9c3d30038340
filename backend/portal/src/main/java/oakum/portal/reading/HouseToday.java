package oakum.portal.reading;

import java.time.Instant;
import java.util.List;
import oakum.portal.calculation.FieldJson.UnitJson;
import oakum.portal.people.Audit;

/**
 * How a house is, in plain words, for the people who live in it.
 *
 * @param until the last day of readings ends here
 * @param sentence one sentence that says whether the house is all right
 * @param items what it rests on: the mean of the last day of each sensor that has a rule
 * @param read what is read in this house, in words
 * @param looks who looked at readings in the last thirty days
 */
public record HouseToday(
        Instant until, String sentence, List<Item> items, List<String> read, List<Audit.DoneBy> looks) {

    /**
     * One thing that was looked at.
     *
     * @param word dry, warm, breathing well
     * @param value the mean of the last day
     * @param right whether it is as it should be
     * @param limit in words: "at most 20 %"
     */
    public record Item(
            String word, String sensor, String label, UnitJson unit, double value, boolean right, String limit) {}
}
