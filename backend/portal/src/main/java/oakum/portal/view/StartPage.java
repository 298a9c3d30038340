package oakum.portal.view;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What one role wants first, in its order.
 *
 * @param role whose page this is
 * @param over small, above the finding
 * @param finding the sentence that a colleague would say
 * @param lead one more sentence; empty where there is nothing to add
 * @param houses the houses that matters name by their id
 * @param sections at most five
 */
public record StartPage(
        String role, String over, String finding, String lead, List<HouseName> houses, List<StartSection> sections) {

    /** A house as people call it. */
    public record HouseName(String id, String name) {}

    /**
     * One thing that the role looks for.
     *
     * @param aside what it is sorted by, or how it is counted; may be empty
     * @param nothing the sentence that stands there where no matter does
     */
    public record StartSection(String title, String aside, List<StartMatter> matters, String nothing) {}

    /**
     * One matter.
     *
     * @param shape the shape before the word: stands, carried, look, lapsed, withdrawn, hold, wait, open, changed, now,
     *     over, under, note, stop
     * @param word the status as a word
     * @param houseId which house, or null
     * @param href where it is dealt with, or null
     * @param tags such as "safety list", "already bought"
     * @param note smaller, below the sentence
     */
    public record StartMatter(
            String shape,
            String word,
            @Nullable String houseId,
            String title,
            @Nullable String href,
            String sentence,
            List<String> tags,
            String note) {}
}
