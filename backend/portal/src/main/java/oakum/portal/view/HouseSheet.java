package oakum.portal.view;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the page of a house needs beside the record: how the house stands, and where on its section.
 *
 * @param role in which the caller looks
 * @param finding the sentence that a colleague would say of the house
 * @param marks for this role, what stops work first
 */
public record HouseSheet(String houseId, String role, String finding, List<SectionMark> marks) {
    /**
     * Something to see on the section.
     *
     * @param on id of a machine of the record, or wall, roof, slab
     * @param shape as in {@link StartPage.StartMatter}
     * @param word the status as a word
     * @param href where it is dealt with, or null
     */
    public record SectionMark(
            String on,
            String title,
            String sentence,
            String shape,
            String word,
            @Nullable String href) {}
}
