package oakum.physics.moistair;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Violation;
import oakum.physics.moistair.MoistAirState.Input;
import oakum.physics.moistair.MoistAirState.Output;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MoistAirStateTest {
    private static final List<String> VAPOUR = List.of("dewPointC", "humidityRatioKgPerKg", "vapourPressurePa");
    private static final List<String> QUANTITIES = List.of(
            "dryBulbC",
            "relativeHumidityFraction",
            "wetBulbC",
            "dewPointC",
            "humidityRatioKgPerKg",
            "enthalpyJPerKg",
            "vapourPressurePa");

    private static Output state(Object... given) {
        Map<String, String> leaves = new LinkedHashMap<>();
        leaves.put("pressurePa", "101325");
        leaves.put("belowFreezing", "OVER_ICE");
        for (int i = 0; i < given.length; i += 2) {
            if (given[i].equals("altitudeM")) {
                leaves.remove("pressurePa");
            }
            leaves.put((String) given[i], given[i + 1].toString());
        }
        return MoistAirState.CALCULATION
                .calculate(Canonical.read(Input.class, leaves))
                .output();
    }

    private static Violation refusal(Object... given) {
        return org.assertj.core.api.Assertions.catchThrowableOfType(Refused.class, () -> state(given))
                .violations()
                .get(0);
    }

    private static boolean fixesAState(String one, String other) {
        boolean same = VAPOUR.contains(one) && VAPOUR.contains(other);
        boolean sideBySide = List.of(one, other).equals(List.of("wetBulbC", "enthalpyJPerKg"));
        return !same && !sideBySide;
    }

    @Property(tries = 150)
    void every_pair_that_fixes_a_state_leads_back_to_it(
            @ForAll @DoubleRange(min = -40, max = 60) double dryBulbC,
            @ForAll @DoubleRange(min = 0.03, max = 0.99) double relativeHumidity,
            @ForAll @DoubleRange(min = 60_000, max = 108_000) double pressurePa,
            @ForAll BelowFreezing convention) {
        Object[] common = {"pressurePa", pressurePa, "belowFreezing", convention};
        Output first = state(with(common, "dryBulbC", dryBulbC, "relativeHumidityFraction", relativeHumidity));
        // between the ice and the water form of the wet bulb one state has two bulbs
        Assume.that(Math.abs(first.wetBulbC()) > 0.5 && Math.abs(dryBulbC) > 0.02 && first.dewPointC() > -90);
        Map<String, String> all = Canonical.flatten(first);

        for (String one : QUANTITIES) {
            for (String other : QUANTITIES.subList(QUANTITIES.indexOf(one) + 1, QUANTITIES.size())) {
                if (fixesAState(one, other)) {
                    Output again = state(with(common, one, all.get(one), other, all.get(other)));

                    assertThat(again.dryBulbC())
                            .as("dry bulb from %s and %s", one, other)
                            .isCloseTo(first.dryBulbC(), within(2e-4));
                    assertThat(again.humidityRatioKgPerKg())
                            .as("humidity ratio from %s and %s", one, other)
                            .isCloseTo(
                                    first.humidityRatioKgPerKg(), within(1e-7 + 1e-5 * first.humidityRatioKgPerKg()));
                }
            }
        }
    }

    private static Object[] with(Object[] common, Object... more) {
        Object[] all = java.util.Arrays.copyOf(common, common.length + more.length);
        System.arraycopy(more, 0, all, common.length, more.length);
        return all;
    }

    @Property
    void more_vapour_raises_dew_point_wet_bulb_and_enthalpy_and_thins_the_air(
            @ForAll @DoubleRange(min = -40, max = 60) double dryBulbC,
            @ForAll @DoubleRange(min = 0.05, max = 0.9) double relativeHumidity) {
        Output drier = state("dryBulbC", dryBulbC, "relativeHumidityFraction", relativeHumidity);
        Output damper = state("dryBulbC", dryBulbC, "relativeHumidityFraction", relativeHumidity + 0.05);
        Assume.that(drier.wetBulbC() * damper.wetBulbC() > 0);

        assertThat(damper.dewPointC()).isGreaterThan(drier.dewPointC());
        assertThat(damper.wetBulbC()).isGreaterThan(drier.wetBulbC());
        assertThat(damper.enthalpyJPerKg()).isGreaterThan(drier.enthalpyJPerKg());
        assertThat(damper.densityKgPerM3()).isLessThan(drier.densityKgPerM3());
    }

    @Test
    void at_saturation_dry_bulb_wet_bulb_and_dew_point_are_one() {
        for (double t : new double[] {-30, -5, 4, 20, 55}) {
            Output saturated = state("dryBulbC", t, "relativeHumidityFraction", 1);

            assertThat(saturated.wetBulbC()).isCloseTo(t, within(1e-6));
            assertThat(saturated.dewPointC()).isCloseTo(t, within(1e-6));
        }
    }

    @Test
    void altitude_stands_in_for_pressure_but_not_beside_it() {
        assertThat(state("dryBulbC", 20, "relativeHumidityFraction", 0.5, "altitudeM", 2350)
                        .pressurePa())
                .isCloseTo(StandardAtmosphere.pressurePa(2350), within(1e-9));
        assertThat(refusal("dryBulbC", 20, "relativeHumidityFraction", 0.5, "altitudeM", 100, "pressurePa", 100000)
                        .field())
                .isEqualTo("altitudeM");
        assertThatThrownBy(() -> MoistAirState.CALCULATION.calculate(
                        new Input(20.0, 0.5, null, null, null, null, null, null, null, BelowFreezing.OVER_ICE)))
                .hasMessageContaining("air pressure, or the altitude");
    }

    @Test
    void over_water_a_reading_below_freezing_means_more_vapour() {
        Output water = state("dryBulbC", -20, "relativeHumidityFraction", 0.8, "belowFreezing", "OVER_WATER");
        Output ice = state("dryBulbC", -20, "relativeHumidityFraction", 0.8);

        // 125.63 Pa over water and 103.26 Pa over ice at −20 °C, computed independently
        assertThat(water.vapourPressurePa() / ice.vapourPressurePa()).isCloseTo(125.63 / 103.26, within(1e-4));
        assertThat(water.notices())
                .singleElement()
                .satisfies(n -> assertThat(n.sentence()).contains("Counted over ice", "97.3 %"));
    }

    @Test
    void supersaturation_over_ice_is_said() {
        assertThat(state("dryBulbC", -20, "relativeHumidityFraction", 0.95, "belowFreezing", "OVER_WATER")
                        .notices())
                .extracting("code")
                .contains("above-ice-saturation");
    }

    @Test
    void a_bulb_that_was_read_between_the_two_forms_stays_as_it_was_read() {
        assertThat(state("dryBulbC", 5, "wetBulbC", -0.01).wetBulbC()).isEqualTo(-0.01);
    }

    @ParameterizedTest
    @CsvSource({
        "dryBulbC, 20, wetBulbC, 21, wetBulbC, 5.8, 20",
        "dryBulbC, 20, wetBulbC, 2, wetBulbC, 5.8, 20",
        "dryBulbC, 20, dewPointC, 20.1, dewPointC, -100, 20",
        "dryBulbC, 20, humidityRatioKgPerKg, 0.02, humidityRatioKgPerKg, 0, 0.0147",
        "dryBulbC, 20, vapourPressurePa, 2400, vapourPressurePa, 0, 2338.8",
        "dryBulbC, 20, enthalpyJPerKg, 19000, enthalpyJPerKg, 20120, 57400",
        "dryBulbC, 20, enthalpyJPerKg, 60000, enthalpyJPerKg, 20120, 57400",
        "wetBulbC, 10, dewPointC, 11, wetBulbC, 11, ",
        "humidityRatioKgPerKg, 0.01, enthalpyJPerKg, 30000, enthalpyJPerKg, 39300, "
    })
    void a_pair_that_contradicts_itself_is_refused_with_the_range_that_would_do(
            String one, double first, String other, double second, String field, Double min, Double max) {
        Violation violation = refusal(one, first, other, second);

        assertThat(violation.field()).isEqualTo(field);
        assertThat(violation.min()).isCloseTo(min, within(0.01 * Math.max(1, Math.abs(min))));
        if (max == null) {
            assertThat(violation.max()).isNull();
        } else {
            assertThat(violation.max()).isCloseTo(max, within(0.01 * Math.max(1, Math.abs(max))));
        }
    }

    @ParameterizedTest
    @CsvSource({
        "dewPointC, 10, humidityRatioKgPerKg, 0.01, humidityRatioKgPerKg, same thing",
        "dewPointC, 10, vapourPressurePa, 900, vapourPressurePa, same thing",
        "humidityRatioKgPerKg, 0.01, vapourPressurePa, 900, vapourPressurePa, same thing",
        "wetBulbC, 10, enthalpyJPerKg, 29000, enthalpyJPerKg, side by side",
        "wetBulbC, 60, relativeHumidityFraction, 0.01, wetBulbC, dry bulb outside",
        "relativeHumidityFraction, 0.01, dewPointC, 60, dewPointC, dry bulb outside",
        "relativeHumidityFraction, 0.5, enthalpyJPerKg, -61000, enthalpyJPerKg, dry bulb outside"
    })
    void a_pair_that_fixes_no_state_is_refused(
            String one, double first, String other, double second, String field, String why) {
        Violation violation = refusal(one, first, other, second);

        assertThat(violation.field()).isEqualTo(field);
        assertThat(violation.sentence()).contains(why);
    }

    @Test
    void one_or_three_quantities_are_refused() {
        assertThat(refusal("dryBulbC", 20).sentence()).contains("1 are given: dryBulbC");
        assertThat(refusal("dryBulbC", 20, "wetBulbC", 15, "dewPointC", 10).sentence())
                .contains("3 are given", "dryBulbC", "wetBulbC", "dewPointC");
        assertThat(refusal().sentence()).contains("none is given");
    }

    @Test
    void air_of_which_nothing_is_left_is_refused() {
        assertThat(refusal("dryBulbC", 90, "relativeHumidityFraction", 0.9, "pressurePa", 60000)
                        .field())
                .isEqualTo("relativeHumidityFraction");
        assertThat(refusal("dryBulbC", 90, "dewPointC", 89, "pressurePa", 60000).field())
                .isEqualTo("dewPointC");
    }
}
