package oakum.physics.mould;

import static oakum.physics.checkrow.CheckRow.abs;
import static oakum.physics.checkrow.CheckRow.rel;
import static oakum.physics.checkrow.CheckRow.row;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Verdict;
import org.junit.jupiter.api.Test;

/** The 30-day mean, decay, and the moisture of wood over time. */
class MoistureCriteriaTest {
    private static final String INDEPENDENT = "computed by independent code from the printed equations";

    private static double lossAfter(int hours, double temperatureC, double humidity) {
        WoodDecay decay = new WoodDecay();
        decay.add(hours, temperatureC, humidity);
        return 100 * decay.massLossFraction();
    }

    @Test
    void decay_settles_and_then_takes_mass() {
        row("DE-1", INDEPENDENT)
                .near(WoodDecay.hoursToSettle(20, 1), 220.4, abs(0.5))
                .near(WoodDecay.hoursToSettle(20, 0.97), 575, abs(0.5))
                .near(WoodDecay.hoursToSettle(10, 1), 514, abs(0.5));
        row("DE-2", INDEPENDENT).near(WoodDecay.lossPercentPerHour(20, 1), 0.00682, rel(0.01));
        row("DE-3", INDEPENDENT).near(lossAfter(8760, 20, 1), 58.24, abs(0.05));
        row("DE-4", INDEPENDENT).near(lossAfter(8760, 10, 0.98), 28.71, abs(0.05));
    }

    @Test
    void no_decay_in_frost_or_at_95_percent_and_the_hold_is_lost_over_two_dry_years() {
        assertThat(lossAfter(8760, 0, 1)).isEqualTo(0);
        assertThat(lossAfter(8760, 20, 0.95)).isEqualTo(0);

        WoodDecay decay = new WoodDecay();
        decay.add(400, 20, 1);
        double lost = decay.massLossFraction();
        assertThat(decay.activation()).isEqualTo(1);
        decay.add(400 + 8760, 20, 0.5);
        assertThat(decay.activation()).isCloseTo(0.5, within(1e-9));
        assertThat(decay.massLossFraction()).isEqualTo(lost).isPositive();
    }

    @Test
    void thirty_days_at_80_percent_fail_and_a_hair_below_passes() {
        ThirtyDayHumidity at = new ThirtyDayHumidity();
        at.add(720, 10, 0.8);
        ThirtyDayHumidity below = new ThirtyDayHumidity();
        below.add(5000, 10, 0.799);
        ThirtyDayHumidity tooShort = new ThirtyDayHumidity();
        tooShort.add(719, 10, 1);

        assertThat(at.verdict()).isEqualTo(Verdict.FAILS);
        assertThat(at.greatestAtHours()).isEqualTo(720);
        assertThat(below.verdict()).isEqualTo(Verdict.PASSES);
        assertThat(below.greatest()).isCloseTo(0.799, within(1e-9));
        assertThat(tooShort.verdict()).isEqualTo(Verdict.NOT_PROVEN);
        assertThat(tooShort.greatest()).isNull();
    }

    @Test
    void cold_wet_months_are_not_judged_for_mould_but_are_for_metal() {
        ThirtyDayHumidity cold = new ThirtyDayHumidity();
        cold.add(2000, 4.9, 0.95);

        assertThat(cold.verdict()).isEqualTo(Verdict.PASSES);
        assertThat(cold.greatest()).isNull();
        assertThat(cold.greatestAtAnyTemperature()).isCloseTo(0.95, within(1e-9));
    }

    @Test
    void wet_hours_among_dry_ones_are_averaged() {
        ThirtyDayHumidity days = new ThirtyDayHumidity();
        for (int day = 0; day < 60; day++) {
            days.add(24 * day + 12, 15, 0.9);
            days.add(24 * day + 24, 15, 0.6);
        }
        assertThat(days.greatest()).isCloseTo(0.75, within(1e-9));
        assertThat(days.verdict()).isEqualTo(Verdict.PASSES);
    }

    @Test
    void a_gap_starts_the_thirty_days_anew() {
        ThirtyDayHumidity days = new ThirtyDayHumidity();
        days.add(700, 10, 0.9);
        days.skip(705);
        days.add(1400, 10, 0.9);
        assertThat(days.verdict()).isEqualTo(Verdict.NOT_PROVEN);
        days.add(1425, 10, 0.9);
        assertThat(days.verdict()).isEqualTo(Verdict.FAILS);
    }

    @Test
    void wood_is_watched_warned_of_and_at_risk() {
        assertThat(watched(40, 10, 0.20)).isEqualTo(WoodMoistureState.SAFE);
        assertThat(watched(30, 10, 0.21)).isEqualTo(WoodMoistureState.WATCH);
        assertThat(watched(30.1, 10, 0.21)).isEqualTo(WoodMoistureState.WARNED);
        assertThat(watched(300, -1, 0.30)).isEqualTo(WoodMoistureState.WATCH);
        assertThat(watched(1, 5, 0.28)).isEqualTo(WoodMoistureState.DECAY_CAN_START);
        assertThat(watched(1, 4.9, 0.28)).isEqualTo(WoodMoistureState.WATCH);
    }

    private static WoodMoistureState watched(double days, double temperatureC, double moisture) {
        WoodMoistureWatch watch = new WoodMoistureWatch();
        watch.add(24 * days, temperatureC, moisture);
        return watch.state();
    }

    @Test
    void frozen_days_neither_count_nor_end_a_wet_spell_and_a_dry_day_ends_it() {
        WoodMoistureWatch frozen = new WoodMoistureWatch();
        frozen.add(20 * 24, 3, 0.22);
        frozen.add(60 * 24, -3, 0.22);
        frozen.add(80 * 24, 3, 0.22);
        WoodMoistureWatch dried = new WoodMoistureWatch();
        dried.add(20 * 24, 3, 0.22);
        dried.add(21 * 24, 3, 0.20);
        dried.add(41 * 24, 3, 0.22);

        assertThat(frozen.longestSpellHours()).isEqualTo(40 * 24);
        assertThat(frozen.state()).isEqualTo(WoodMoistureState.WARNED);
        assertThat(dried.state()).isEqualTo(WoodMoistureState.WATCH);
    }

    @Test
    void more_than_ten_years_are_refused_with_a_way_on() {
        var input = new DecayOfWood.Input(List.of(new ClimateStep(365, 20, 1)), 11);

        assertThatThrownBy(() -> DecayOfWood.CALCULATION.calculate(input))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("last 4015 days");
    }
}
