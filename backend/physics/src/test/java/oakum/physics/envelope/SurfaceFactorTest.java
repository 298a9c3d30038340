package oakum.physics.envelope;

import static oakum.physics.checkrow.CheckRow.abs;
import static oakum.physics.checkrow.CheckRow.row;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Verdict;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class SurfaceFactorTest {
    private static final String COMPUTED = "ISO 13788, computed by two independent programs";

    private static MonthRow day(double outdoorC, double indoorHumidity) {
        return new MonthRow(outdoorC, 0.8, 20.0, indoorHumidity);
    }

    private static SurfaceFactor.Output of(
            @Nullable Double u, @Nullable Double f, SurfaceFactor.@Nullable Measured measured, MonthRow... months) {
        return withSurface(u, null, f, measured, months);
    }

    private static SurfaceFactor.Output withSurface(
            @Nullable Double u,
            @Nullable Double surface,
            @Nullable Double f,
            SurfaceFactor.@Nullable Measured measured,
            MonthRow... months) {
        return SurfaceFactor.CALCULATION
                .calculate(new SurfaceFactor.Input(
                        SurfaceFactor.Surface.OPAQUE,
                        u,
                        surface,
                        f,
                        measured,
                        SurfaceFactor.Criterion.MOULD,
                        List.of(months),
                        IndoorHumidity.OWN))
                .output();
    }

    @Test
    void the_factor_of_a_plane_part_follows_from_its_u_value() {
        row("FR-1", COMPUTED)
                .near(of(0.30, null, null, day(-5, 0.5)).factor(), 0.925, abs(0.0005))
                .near(of(0.15, null, null, day(-5, 0.5)).factor(), 0.9625, abs(0.0005));
    }

    @Test
    void a_u_value_with_the_usual_inside_surface_is_turned_first() {
        double usual = 1 / (1 / 0.30 - 0.25 + 0.13);

        assertThat(withSurface(usual, 0.13, null, null, day(-5, 0.5)).factor()).isCloseTo(0.925, within(1e-12));
    }

    @Test
    void the_factor_follows_from_temperatures_that_were_read() {
        row("FR-2", COMPUTED)
                .near(
                        of(null, null, new SurfaceFactor.Measured(16.3, 20, -10), day(-10, 0.4))
                                .factor(),
                        0.877,
                        abs(0.001));
    }

    @Test
    void humid_air_needs_a_warm_surface() {
        SurfaceFactor.Output german = of(null, 0.75, null, day(-5, 0.5));
        row("FR-3", "DIN 4108-2 rule of 0.70 and 12.6 °C, from memory; " + COMPUTED)
                .near(german.months().get(0).leastSurfaceC(), 12.62, abs(0.02))
                .near(german.neededFactor(), 0.705, abs(0.001));
        SurfaceFactor.Output cold = of(null, 0.75, null, day(-10, 0.4));
        row("FR-4", COMPUTED)
                .near(cold.months().get(0).leastSurfaceC(), 9.27, abs(0.02))
                .near(cold.neededFactor(), 0.642, abs(0.001));
    }

    @Test
    void a_factor_says_what_the_surface_and_the_room_stand() {
        SurfaceFactor.Month month = of(null, 0.75, null, day(-5, 0.5)).months().get(0);

        row("FR-5", COMPUTED)
                .near(month.surfaceC(), 13.75, abs(0.02))
                .near(month.surfaceHumidityFraction(), 0.743, abs(0.002));
        row("FR-6", "ISO 13788, computed by one program")
                .near(month.mouldHumidityFraction(), 0.538, abs(0.001))
                .near(month.condensationHumidityFraction(), 0.673, abs(0.001));
    }

    @Test
    void the_worst_month_governs() {
        SurfaceFactor.Output year = of(null, 0.70, null, day(10, 0.5), day(-5, 0.5), day(-10, 0.3));

        assertThat(year.worstMonthCount()).isEqualTo(2);
        assertThat(year.verdict()).isEqualTo(Verdict.FAILS);
        assertThat(of(null, 0.75, null, day(25, 0.5)).neededFactor()).isNull();
    }

    @Test
    void refuses_a_surface_known_in_no_way_or_in_two() {
        assertThatThrownBy(() -> of(null, null, null, day(-5, 0.5)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("exactly one");
        assertThatThrownBy(() -> of(0.3, 0.9, null, day(-5, 0.5))).hasMessageContaining("2 were given");
        assertThatThrownBy(() -> of(null, null, new SurfaceFactor.Measured(30, 20, 0), day(-5, 0.5)))
                .hasMessageContaining("not between outdoors");
        assertThatThrownBy(() -> of(null, 0.9, null, new MonthRow(-5, 0.8, null, null)))
                .hasMessageContaining("months[0].indoorHumidityFraction");
    }

    @Property
    void a_better_u_value_never_means_a_colder_surface(
            @ForAll @DoubleRange(min = 0.05, max = 3) double u,
            @ForAll @DoubleRange(min = 0.05, max = 3) double other,
            @ForAll @DoubleRange(min = -30, max = 15) double outdoorC) {
        SurfaceFactor.Output better = of(Math.min(u, other), null, null, day(outdoorC, 0.5));
        SurfaceFactor.Output worse = of(Math.max(u, other), null, null, day(outdoorC, 0.5));

        assertThat(better.factor()).isGreaterThanOrEqualTo(worse.factor());
        assertThat(better.months().get(0).surfaceHumidityFraction())
                .isLessThanOrEqualTo(worse.months().get(0).surfaceHumidityFraction() + 1e-12);
    }

    @Property
    void more_humid_air_never_needs_a_colder_surface(
            @ForAll @DoubleRange(min = 0.1, max = 1) double humidity,
            @ForAll @DoubleRange(min = 0.1, max = 1) double other) {
        Double drier = of(null, 0.9, null, day(-5, Math.min(humidity, other))).neededFactor();
        Double damper = of(null, 0.9, null, day(-5, Math.max(humidity, other))).neededFactor();

        assertThat(damper).isGreaterThanOrEqualTo(drier);
    }
}
