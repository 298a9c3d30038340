package oakum.portal.reading;

import java.util.List;
import java.util.UUID;

/**
 * What became of one request with readings. It is answered after the commit: what is counted here is kept.
 *
 * @param received values that came, empty fields aside
 * @param accepted values that are new and kept
 * @param alreadyKnown values that were kept before, the same
 * @param refused values and lines that were not taken; accepted + alreadyKnown + refused = received
 * @param empty fields that say "no value"
 * @param refusals the first hundred
 * @param rejectsLink where all of them are read
 */
public record ReadingBatch(
        UUID batch,
        long received,
        long accepted,
        long alreadyKnown,
        long refused,
        long empty,
        List<Refusal> refusals,
        String rejectsLink) {

    /**
     * One thing that was not taken.
     *
     * @param line in the file, from 1
     * @param field the column or member; empty where it is the whole line
     */
    public record Refusal(long line, String field, String value, String reason) {}
}
