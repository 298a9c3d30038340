package oakum.physics.controllayer;

import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Source;

/**
 * One rule that is broken, or cannot be judged yet.
 *
 * @param id the rule, with what it is about where it can hold several times
 * @param about short name of the layer, junction or hole; empty for the whole
 * @param sentence what is wrong, with numbers and units
 * @param reason what happens to the house if it stays so
 * @param source of the rule, with how well it was seen
 */
public record Finding(
        @Entry(label = "Rule", maxLength = 120) String id,
        @Entry(label = "Weight") FindingWeight weight,
        @Entry(label = "About", maxLength = 60) String about,
        @Entry(label = "Finding", maxLength = 500) String sentence,
        @Entry(label = "Because", maxLength = 500) String reason,
        @Entry(label = "Source", maxLength = 300) String source) {
    static Finding of(String rule, FindingWeight weight, String about, String sentence, String reason, Source source) {
        return new Finding(rule, weight, about, sentence, reason, source.printed());
    }
}
