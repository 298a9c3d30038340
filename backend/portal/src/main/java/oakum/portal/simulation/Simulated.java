package oakum.portal.simulation;

import java.util.List;
import oakum.physics.calculation.Answer;
import org.jspecify.annotations.Nullable;

/**
 * What came of a run.
 *
 * @param answer null where the run did not go through
 * @param stopped where and when it could not go on, a sentence; null where it went through or was cancelled
 * @param cancelled whether somebody ended it
 * @param profiles one a day of the last year that was reached
 */
record Simulated(
        @Nullable Answer<?, ?> answer,
        @Nullable String stopped,
        boolean cancelled,
        Tape tape,
        List<Tape.TapeProfile> profiles) {}
