package oakum.portal.job;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A piece of long work and how far it is.
 *
 * @param kind what does it, in kebab case
 * @param title for people: "Wall W1, north, three years"
 * @param doneFraction 0 to 1
 * @param step what it does now or did last, a sentence
 * @param failure why it ended without a result, a sentence that says where and when
 * @param actions what this person may do with it now: {@code cancel}
 */
public record Job(
        UUID id,
        String kind,
        String house,
        String title,
        String askedBy,
        Instant askedAt,
        JobState state,
        double doneFraction,
        String step,
        @Nullable Instant startedAt,
        @Nullable Instant endedAt,
        @Nullable String failure,
        List<String> actions) {}
