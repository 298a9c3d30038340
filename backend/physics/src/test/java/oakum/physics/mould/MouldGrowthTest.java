package oakum.physics.mould;

import static oakum.physics.checkrow.CheckRow.abs;
import static oakum.physics.checkrow.CheckRow.rel;
import static oakum.physics.checkrow.CheckRow.row;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oakum.physics.checkrow.CheckRow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class MouldGrowthTest {
    private static final String INDEPENDENT = "computed by independent code from the printed equations";
    private static final int WEEK = 168;

    private static MouldGrowth on(MouldSurface surface, double decline) {
        return new MouldGrowth(surface, decline, BelowFreezingMould.DECLINES, 0);
    }

    private static void hold(CheckRow row, MouldGrowth growth, double c, double rh, int[] weeks, double[] expected) {
        for (int i = 0; i < weeks.length; i++) {
            growth.add(weeks[i] * WEEK, c, rh);
            row.near(growth.index(), expected[i], abs(0.02));
        }
    }

    @Test
    void nothing_grows_below_a_humidity_that_falls_with_warmth() {
        double[] temperature = {1, 5, 10, 15, 20, 25};
        double[] critical = {97.03, 88.02, 82.03, 80.04, 80.04, 80};
        for (int i = 0; i < temperature.length; i++) {
            row("MO-1", INDEPENDENT)
                    .near(
                            100 * MouldSurface.RESAWN_PINE.criticalHumidityFraction(temperature[i]),
                            critical[i],
                            abs(0.01));
        }
    }

    @Test
    void weeks_to_first_and_to_visible_growth() {
        MouldSurface pine = MouldSurface.RESAWN_PINE;

        row("MO-2", INDEPENDENT)
                .near(pine.weeksToFirstGrowth(20, 0.97), 1.484, rel(0.002))
                .near(pine.weeksToVisibleGrowth(20, 0.97), 2.983, rel(0.002))
                .near(pine.weeksToFirstGrowth(20, 0.90), 4.202, rel(0.002))
                .near(pine.weeksToVisibleGrowth(20, 0.90), 7.734, rel(0.002))
                .near(pine.weeksToFirstGrowth(10, 0.97), 2.377, rel(0.002))
                .near(pine.weeksToVisibleGrowth(10, 0.97), 4.982, rel(0.002));
    }

    @Test
    void growth_ends_at_an_index_that_the_humidity_sets() {
        MouldSurface pine = MouldSurface.RESAWN_PINE;

        row("MO-3", INDEPENDENT)
                .near(pine.greatestIndex(20, 0.97), 5.50, abs(0.01))
                .near(pine.greatestIndex(20, 0.90), 3.995, abs(0.01))
                .near(pine.greatestIndex(20, 0.85), 2.62, abs(0.01));
    }

    @Test
    void pine_in_a_climate_that_stays() {
        MouldGrowth wet = on(MouldSurface.RESAWN_PINE, 1);
        CheckRow row = row("MO-4", INDEPENDENT);
        hold(row, wet, 20, 0.97, new int[] {1, 2, 3, 4, 6, 8}, new double[] {.674, 1.686, 3.019, 4.325, 5.491, 5.504});
        row.near(wet.firstGrowthAtHours() / 24, 10.4, abs(0.2)).near(wet.visibleAtHours() / 24, 20.9, abs(0.2));

        hold(row("MO-5", INDEPENDENT), on(MouldSurface.RESAWN_PINE, 1), 20, 0.90, new int[] {4, 8, 12}, new double[] {
            .952, 3.091, 3.979
        });
    }

    @Test
    void classes_in_a_climate_that_stays() {
        MouldGrowth planed = on(MouldSurface.SENSITIVE, 1);
        CheckRow row = row("MO-6", INDEPENDENT);
        hold(row, planed, 20, 0.97, new int[] {2, 4, 8, 12, 24, 52}, new double[] {
            .779, 1.373, 2.412, 3.430, 4.671, 4.676
        });
        row.near(planed.visibleAtHours() / 24, 72, abs(0.5));

        hold(
                row("MO-7", INDEPENDENT),
                on(MouldSurface.VERY_SENSITIVE, 1),
                20,
                0.97,
                new int[] {1, 2, 4, 8},
                new double[] {.674, 1.693, 4.357, 5.504});
    }

    @Test
    void decline_is_quick_then_stands_then_is_slow() {
        MouldGrowth pine = new MouldGrowth(MouldSurface.VERY_SENSITIVE, 1, BelowFreezingMould.DECLINES, 2);
        int[] hours = {6, 24, 48, 120, 240};
        double[] expected = {1.992, 1.992, 1.976, 1.928, 1.848};
        for (int i = 0; i < hours.length; i++) {
            pine.add(hours[i], 20, 0.5);
            row("MO-8", INDEPENDENT).near(pine.index(), expected[i], abs(0.001));
        }

        MouldGrowth slow = new MouldGrowth(MouldSurface.SENSITIVE, 0.1, BelowFreezingMould.DECLINES, 2);
        slow.add(24, 20, 0.5);
        CheckRow row = row("MO-9", INDEPENDENT).near(slow.index(), 1.9992, abs(0.0003));
        slow.add(240, 20, 0.5);
        row.near(slow.index(), 1.9848, abs(0.0003));
    }

    @Test
    void humid_nights_and_dry_days() {
        MouldGrowth growth = on(MouldSurface.RESAWN_PINE, 1);
        for (int day = 0; day < 84; day++) {
            growth.add(24 * day + 8, 20, 0.97);
            growth.add(24 * day + 24, 20, 0.60);
        }
        int[] weeks = {1, 4, 8, 12};
        double[] expected = {.169, .675, 1.809, 3.360};
        for (int i = 0; i < weeks.length; i++) {
            row("MO-10", INDEPENDENT).near(growth.byDay()[7 * weeks[i] - 1], expected[i], abs(0.02));
        }
        assertThat(growth.favourableHours()).isEqualTo(84 * 8);
        assertThat(growth.byDay()).hasSize(84);
    }

    @Test
    void three_cold_humid_years() {
        MouldGrowth growth = on(MouldSurface.SENSITIVE, 0.1);
        double[] atEnd = {.866, 1.128, 1.232};
        double[] greatest = {.977, 1.239, 1.343};
        for (int year = 0; year < 3; year++) {
            for (int h = 0; h < 8760; h++) {
                double wave = Math.cos(2 * Math.PI * h / 8760);
                growth.add(8760 * year + h + 1, 8 - 12 * wave, 0.88 + 0.07 * wave);
            }
            row("MO-11", INDEPENDENT)
                    .near(growth.index(), atEnd[year], abs(0.01))
                    .near(growth.greatest(), greatest[year], abs(0.01));
        }
        assertThat(growth.greatestAtHours()).isGreaterThan(2 * 8760);
    }

    @Test
    void frozen_hours_decline_or_stand_as_was_chosen() {
        MouldGrowth declining = new MouldGrowth(MouldSurface.SENSITIVE, 1, BelowFreezingMould.DECLINES, 2);
        MouldGrowth standing = new MouldGrowth(MouldSurface.SENSITIVE, 1, BelowFreezingMould.STANDS, 2);
        declining.add(1000, -10, 0.99);
        standing.add(1000, -10, 0.99);

        assertThat(declining.index()).isLessThan(1.4);
        assertThat(standing.index()).isEqualTo(2);
    }

    @Test
    void minutes_hours_and_long_stretches_come_out_alike() {
        MouldGrowth long1 = on(MouldSurface.SENSITIVE, 1);
        MouldGrowth minutes = on(MouldSurface.SENSITIVE, 1);
        long1.add(2000, 18, 0.95);
        for (int i = 1; i <= 12_000; i++) {
            minutes.add(i / 6.0, 18, 0.95);
        }

        assertThat(minutes.index()).isCloseTo(long1.index(), within(2e-3));
        assertThat(minutes.byDay()).hasSameSizeAs(long1.byDay());
    }

    @Test
    void a_silent_sensor_leaves_the_index_where_it_is() {
        MouldGrowth growth = new MouldGrowth(MouldSurface.SENSITIVE, 1, BelowFreezingMould.DECLINES, 2);
        growth.skip(480);

        assertThat(growth.index()).isEqualTo(2);
        assertThat(growth.missingHours()).isEqualTo(480);
        assertThat(growth.byDay()).hasSize(20).containsOnly(2);
    }

    @Test
    void refuses_what_is_no_climate_and_names_the_hour() {
        MouldGrowth growth = on(MouldSurface.SENSITIVE, 1);
        growth.add(5, 20, 0.5);

        assertThatThrownBy(() -> growth.add(5, 20, 0.5)).hasMessageContaining("does not come after hour 5");
        assertThatThrownBy(() -> growth.add(6, Double.NaN, 0.5)).hasMessageContaining("at hour 6");
        assertThatThrownBy(() -> growth.add(6, 20, 80)).hasMessageContaining("relative humidity 80.0 at hour 6");
        assertThatThrownBy(() -> new MouldGrowth(MouldSurface.SENSITIVE, 2, BelowFreezingMould.STANDS, 0))
                .hasMessageContaining("decline factor");
    }

    @ParameterizedTest
    @EnumSource(MouldSurface.class)
    void nothing_grows_in_frost_in_heat_or_in_dry_air(MouldSurface surface) {
        double[][] climates = {{0, 1}, {-5, 1}, {50, 1}, {20, 0.79}, {5, 0.87}};
        for (double[] climate : climates) {
            MouldGrowth growth = on(surface, 1);
            growth.add(8760, climate[0], climate[1]);
            assertThat(growth.index()).isEqualTo(0);
        }
    }

    @ParameterizedTest
    @EnumSource(MouldSurface.class)
    void a_hair_above_freezing_the_equations_stay_finite(MouldSurface surface) {
        MouldGrowth growth = on(surface, 1);
        growth.add(8760, 1e-7, 1);
        growth.add(8761, Double.MIN_VALUE, 1);

        assertThat(growth.index()).isBetween(0.0, 1e-3);
    }

    @Property
    void more_humidity_never_grows_less(
            @ForAll MouldSurface surface,
            @ForAll @DoubleRange(min = 0.5, max = 49) double temperatureC,
            @ForAll @DoubleRange(min = 0.6, max = 1) double humidity,
            @ForAll @DoubleRange(min = 0, max = 0.2) double more) {
        MouldGrowth drier = on(surface, 0.5);
        MouldGrowth wetter = on(surface, 0.5);
        drier.add(60 * 24, temperatureC, humidity);
        wetter.add(60 * 24, temperatureC, Math.min(humidity + more, 1));

        assertThat(wetter.index()).isGreaterThanOrEqualTo(drier.index() - 1e-12);
        assertThat(wetter.index()).isBetween(0.0, 6.0);
    }

    @Test
    void the_classes_stand_in_their_order() {
        double last = Double.POSITIVE_INFINITY;
        for (MouldSurface surface : new MouldSurface[] {
            MouldSurface.VERY_SENSITIVE, MouldSurface.SENSITIVE, MouldSurface.MEDIUM_RESISTANT, MouldSurface.RESISTANT
        }) {
            MouldGrowth growth = on(surface, 0.1);
            growth.add(8760, 22, 0.96);
            assertThat(growth.index()).isLessThan(last);
            last = growth.index();
        }
    }
}
