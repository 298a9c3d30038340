package oakum.portal.people;

import org.jspecify.annotations.Nullable;

/** The append-only trail of who did what. */
public interface Audit {
    /**
     * Writes one line in the transaction of the act itself.
     *
     * @param act kebab case: {@code part-changed}, {@code approval-given}
     * @param houseId the house concerned, or null
     * @param what one sentence with the values
     */
    void record(String act, @Nullable String houseId, String what);
}
