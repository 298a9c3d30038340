package oakum.portal.reading;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * How long readings stayed beyond the limit of their rule.
 *
 * @param limit beyond it a stretch begins, in the sensor's unit
 * @param past {@code above} or {@code below}: the side on which one must not stay
 * @param persistenceS how long a stretch may last before somebody looks
 * @param source where the rule comes from
 * @param count how many stretches there were
 * @param peak the value farthest beyond, or null where there was none
 * @param longestS the longest stretch, 0 where there was none
 * @param stayed the stretches that lasted too long, at most fifty
 * @param sentence the finding in words
 */
public record Persistence(
        double limit,
        String past,
        long persistenceS,
        String source,
        int count,
        @Nullable Double peak,
        long longestS,
        List<Stretch> stayed,
        String sentence) {
    private static final int MOST = 50;

    /** A time beyond the limit. */
    public record Stretch(Instant from, Instant to, double peak) {
        Duration length() {
            return Duration.between(from, to);
        }
    }

    /** Collects stretches from readings in the order of time. */
    static final class Count {
        private final PersistenceRule rule;
        private final List<Stretch> stretches = new ArrayList<>();
        private @Nullable Stretch open;

        Count(PersistenceRule rule) {
            this.rule = rule;
        }

        void take(Instant at, double value) {
            Stretch now = open;
            if (now == null) {
                if (rule.beyond(value)) {
                    open = new Stretch(at, at, value);
                }
            } else if (rule.back(value)) {
                stretches.add(new Stretch(now.from(), at, now.peak()));
                open = null;
            } else {
                open = new Stretch(now.from(), at, rule.farther(value, now.peak()) ? value : now.peak());
            }
        }

        Persistence done() {
            if (open != null) {
                stretches.add(open);
                open = null;
            }
            Double peak = null;
            Duration longest = Duration.ZERO;
            for (Stretch stretch : stretches) {
                peak = peak == null || rule.farther(stretch.peak(), peak) ? Double.valueOf(stretch.peak()) : peak;
                longest = stretch.length().compareTo(longest) > 0 ? stretch.length() : longest;
            }
            List<Stretch> stayed = stretches.stream()
                    .filter(stretch -> stretch.length().compareTo(rule.persistence()) >= 0)
                    .limit(MOST)
                    .toList();
            return new Persistence(
                    rule.limit(),
                    rule.below() ? "below" : "above",
                    rule.persistence().toSeconds(),
                    rule.source(),
                    stretches.size(),
                    peak,
                    longest.toSeconds(),
                    stayed,
                    sentence(peak, longest, stayed.size()));
        }

        private String sentence(@Nullable Double peak, Duration longest, int stayed) {
            String beyond = (rule.below() ? "below " : "above ") + text(rule.limit());
            String waits = "The rule waits " + words(rule.persistence());
            if (peak == null) {
                return "Never " + beyond + ". " + waits + ": nothing was raised.";
            }
            int count = stretches.size();
            String times = count == 1 ? "Once " : count == 2 ? "Twice " : count + " times ";
            String most = "the " + (rule.below() ? "lowest " : "highest ") + text(peak) + ", the longest "
                    + words(longest) + ". ";
            return times + beyond + ", " + most + waits + ": "
                    + (stayed == 0 ? "nothing was raised." : stayed == 1 ? "look at one." : "look at " + stayed + ".");
        }

        private String text(double value) {
            var shown = rule.property().unit().si();
            String number = String.format(Locale.ROOT, "%.0f", value * shown.factor() + shown.offset());
            return number.replace('-', '\u2212') + "\u202f" + shown.symbol();
        }
    }

    private static String words(Duration duration) {
        if (duration.compareTo(Duration.ofDays(2)) >= 0) {
            return duration.toDays() + " days";
        }
        long hours = duration.toHours();
        long minutes = duration.toMinutesPart();
        if (hours == 0) {
            return minutes + " min";
        }
        return hours + " h" + (minutes == 0 ? "" : " " + minutes + " min");
    }
}
