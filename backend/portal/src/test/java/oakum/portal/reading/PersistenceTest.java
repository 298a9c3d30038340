package oakum.portal.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class PersistenceTest {
    private static final Instant MORNING = Instant.parse("2026-05-14T10:40:00Z");
    private static final Sensor BATH = new Sensor(
            "bath.rh", "Bath up", ObservedProperty.RELATIVE_HUMIDITY, "1", "bath up", null, null, 0.03, 300, 0);

    @Test
    void a_shower_is_counted_and_raises_nothing() {
        Persistence.Count count = bath();
        double[] shower = {0.43, 0.88, 0.81, 0.72, 0.66, 0.63, 0.59, 0.5, 0.43};
        read(count, shower, Duration.ofMinutes(10));

        Persistence found = count.done();

        assertThat(found.count()).isEqualTo(1);
        assertThat(found.peak()).isEqualTo(0.88);
        assertThat(found.longestS()).isEqualTo(50 * 60);
        assertThat(found.stayed()).isEmpty();
        assertThat(found.sentence()).contains("88").contains("50 min").endsWith("nothing was raised.");
    }

    @Test
    void three_hours_beyond_the_limit_are_worth_a_look() {
        Persistence.Count count = bath();
        double[] leak = {0.43, 0.75, 0.65, 0.75, 0.75, 0.55};
        read(count, leak, Duration.ofMinutes(45));

        Persistence found = count.done();

        assertThat(found.stayed()).hasSize(1);
        assertThat(found.stayed().get(0).length()).isEqualTo(Duration.ofHours(3));
        assertThat(found.sentence()).endsWith("look at one.");
    }

    @Test
    void what_never_passes_its_limit_says_so() {
        Persistence.Count count = bath();
        read(count, new double[] {0.4, 0.6, 0.7}, Duration.ofMinutes(5));

        assertThat(count.done().sentence()).startsWith("Never above").endsWith("nothing was raised.");
    }

    @Test
    void house_pressure_is_beyond_its_limit_below_it() {
        Sensor house = new Sensor(
                "house.pressure", "House", ObservedProperty.HOUSE_PRESSURE, "Pa", null, null, null, 0.5, 300, 0);
        PersistenceRule rule = java.util.Objects.requireNonNull(PersistenceRule.of(house));
        Persistence.Count count = new Persistence.Count(rule);
        read(count, new double[] {-1, -12, -31, -14, -1}, Duration.ofMinutes(2));

        Persistence found = count.done();

        assertThat(found.peak()).isCloseTo(-31, within(0.0));
        assertThat(found.past()).isEqualTo("below");
        assertThat(found.stayed()).hasSize(1);
    }

    @Test
    void a_living_room_has_no_rule_of_the_bath() {
        Sensor living = new Sensor(
                "living.rh",
                "Living",
                ObservedProperty.RELATIVE_HUMIDITY,
                "1",
                "living room",
                null,
                null,
                0.03,
                300,
                0);
        assertThat(PersistenceRule.of(living)).isNull();
    }

    private static Persistence.Count bath() {
        return new Persistence.Count(java.util.Objects.requireNonNull(PersistenceRule.of(BATH)));
    }

    private static void read(Persistence.Count count, double[] values, Duration apart) {
        for (int i = 0; i < values.length; i++) {
            count.take(MORNING.plus(apart.multipliedBy(i)), values[i]);
        }
    }
}
