package oakum.physics.housepressure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oakum.physics.calculation.Canonical;

class HousePressurePropertyTest {
    private static TestHouse house(double q50, double n, FlowBasis basis) {
        return new TestHouse().q50(q50).exponent(n).basis(basis, 15.0);
    }

    @Property(tries = 200)
    void more_exhaust_never_means_less_pressure(
            @ForAll @DoubleRange(min = 0.01, max = 1) double q50,
            @ForAll @DoubleRange(min = 0.5, max = 1) double n,
            @ForAll @DoubleRange(max = 0.5) double exhaust,
            @ForAll @DoubleRange(max = 0.5) double more,
            @ForAll FlowBasis basis) {
        double before = house(q50, n, basis).runs("a", exhaust).result().housePressurePa();
        double after = house(q50, n, basis).runs("a", exhaust + more).result().housePressurePa();

        assertThat(after).isGreaterThanOrEqualTo(before - 1e-9);
    }

    @Property(tries = 200)
    void what_comes_in_goes_out(
            @ForAll @DoubleRange(min = 0.01, max = 1) double q50,
            @ForAll @DoubleRange(min = 0.5, max = 1) double n,
            @ForAll @DoubleRange(max = 0.5) double hood,
            @ForAll @DoubleRange(min = 50, max = 500) double shutOff,
            @ForAll @DoubleRange(max = 0.5) double makeUp,
            @ForAll @DoubleRange(min = 0.02, max = 0.3) double opening,
            @ForAll FlowBasis basis) {
        HousePressureResult result = house(q50, n, basis)
                .hood(hood / TestHouse.CFM, "mau", shutOff)
                .makeUp(makeUp)
                .opening("hole", opening, 3.0, 10.0, false)
                .result();

        assertThat(result.balanceErrorKgPerS()).isLessThanOrEqualTo(1e-9);
    }

    @Property(tries = 200)
    void fans_that_give_way_pull_no_harder_than_their_rated_flow(
            @ForAll @DoubleRange(min = 0.01, max = 1) double q50,
            @ForAll @DoubleRange(min = 0.01, max = 0.5) double hood,
            @ForAll @DoubleRange(min = 20, max = 500) double shutOff,
            @ForAll @DoubleRange(max = 0.99) double match,
            @ForAll FlowBasis basis) {
        HousePressureResult result = house(q50, 0.65, basis)
                .hood(hood / TestHouse.CFM, "mau", shutOff)
                .makeUp(hood * match * 0.9)
                .result();

        assertThat(result.combinations()).allSatisfy(c -> {
            assertThat(c.coupledPressurePa()).isLessThanOrEqualTo(c.housePressurePa() + 1e-9);
            assertThat(c.failedCoupledPressurePa()).isLessThanOrEqualTo(c.failedPressurePa() + 1e-9);
        });
    }

    @Property(tries = 200)
    void more_make_up_air_means_less_pressure(
            @ForAll @DoubleRange(min = 0.01, max = 1) double q50,
            @ForAll @DoubleRange(min = 0.01, max = 0.5) double hood,
            @ForAll @DoubleRange(max = 0.5) double makeUp,
            @ForAll @DoubleRange(min = 0.01, max = 0.5) double more) {
        assertThat(hoodAlone(q50, hood, makeUp + more)).isLessThan(hoodAlone(q50, hood, makeUp));
    }

    private static double hoodAlone(double q50, double hood, double makeUp) {
        return new TestHouse()
                .q50(q50)
                .hood(hood / TestHouse.CFM, "mau", null)
                .makeUp(makeUp)
                .byId()
                .get("hood")
                .housePressurePa();
    }

    @Property(tries = 200)
    void the_make_up_air_needed_holds_the_limit_exactly(
            @ForAll @DoubleRange(min = 0.01, max = 0.3) double q50,
            @ForAll @DoubleRange(min = 0.2, max = 0.6) double hood,
            @ForAll @DoubleRange(min = 1, max = 20) double limit,
            @ForAll @DoubleRange(min = 100, max = 500) double shutOff,
            @ForAll FlowBasis basis) {
        HousePressureResult without = house(q50, 0.65, basis)
                .limit(limit)
                .hood(hood / TestHouse.CFM, "mau", shutOff)
                .makeUp(0)
                .result();

        HousePressureResult with = house(q50, 0.65, basis)
                .limit(limit)
                .hood(hood / TestHouse.CFM, "mau", shutOff)
                .makeUp(without.makeUpNeededM3PerS())
                .result();
        HousePressureResult withCurves = house(q50, 0.65, basis)
                .limit(limit)
                .hood(hood / TestHouse.CFM, "mau", shutOff)
                .makeUp(without.makeUpNeededWithFanCurvesM3PerS())
                .result();

        if (without.makeUpNeededWithFanCurvesM3PerS() > 0) {
            assertThat(with.housePressurePa()).isCloseTo(limit, within(1e-6));
            assertThat(withCurves.coupledPressurePa()).isCloseTo(limit, within(1e-6));
        }
    }

    @Property(tries = 50)
    void a_very_wide_opening_leaves_no_pressure(@ForAll @DoubleRange(max = 0.1) double exhaust) {
        double pressure = new TestHouse()
                .runs("a", exhaust)
                .opening("wide", 1, null, null, false)
                .opening("wider", 1, null, null, false)
                .opening("widest", 1, null, null, false)
                .result()
                .housePressurePa();

        assertThat(pressure).isBetween(0.0, 0.01);
    }

    @Property(tries = 300)
    void every_house_within_the_limits_gets_finite_numbers(
            @ForAll @DoubleRange(min = 0.01, max = 20) double q50,
            @ForAll @DoubleRange(min = 0.5, max = 1) double n,
            @ForAll @DoubleRange(max = 2) double hood,
            @ForAll @DoubleRange(min = 1, max = 3000) double shutOff,
            @ForAll @DoubleRange(max = 2) double other,
            @ForAll @DoubleRange(max = 2) double makeUp,
            @ForAll @DoubleRange(min = -500, max = 5000) double altitude,
            @ForAll @DoubleRange(min = -60, max = 45) double outdoor,
            @ForAll FlowBasis basis) {
        HousePressureResult result = house(q50 / 10, n, basis)
                .place(altitude, 21, outdoor)
                .uncertainty(0.5)
                .exponentUncertainty(0.3)
                .device("hood", DeviceKind.RANGE_HOOD, hood, Running.SOMETIMES, "mau", shutOff, 40.0)
                .runs("other", other)
                .makeUp(makeUp)
                .opening("hole", 0.1, 0.0, 5.0, false)
                .result();

        // reading every number as canonical text refuses what is not finite
        assertThat(Canonical.flatten(result)).containsKey("housePressurePa");
    }
}
