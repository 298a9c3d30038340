package oakum.portal.job;

import java.util.UUID;

/** A job from within. */
public interface JobWork {
    UUID id();

    String house();

    /** What was asked, as JSON text. */
    String request();

    /**
     * Tells how far it is; cheap enough to be called for every simulated day.
     *
     * @param fraction 0 to 1
     * @param step a short sentence
     * @return whether to go on; false once somebody cancelled it or the portal is going down, when the work returns as
     *     soon as it can and what it returns is dropped
     */
    boolean goOn(double fraction, String step);
}
