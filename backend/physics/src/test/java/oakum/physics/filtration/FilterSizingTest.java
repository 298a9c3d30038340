package oakum.physics.filtration;

import static oakum.physics.checkrow.CheckRow.rel;
import static oakum.physics.checkrow.CheckRow.row;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Verdict;
import oakum.physics.filtration.FilterSizing.Candidate;
import oakum.physics.filtration.FilterSizing.CoilAir;
import oakum.physics.filtration.FilterSizing.FanKind;
import oakum.physics.filtration.FilterSizing.House;
import oakum.physics.filtration.FilterSizing.Input;
import oakum.physics.filtration.FilterSizing.Option;
import oakum.physics.filtration.FilterSizing.Output;
import oakum.physics.filtration.FilterSizing.RatedPoint;
import oakum.physics.filtration.FilterSizing.Rules;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FilterSizingTest {
    private static final double CFM = 0.3048 * 0.3048 * 0.3048 / 60;
    private static final double FPM = 0.3048 / 60;
    private static final double IN = 0.0254;
    private static final House HOUSE = new House(12, 400, 0.03, 0.7, 0.04, 0.5, 0.39, 2000);

    private static Candidate inches(String id, double width, double height, int count, double linear, double square) {
        return new Candidate(
                id,
                id,
                width * IN,
                height * IN,
                5 * IN,
                count,
                null,
                null,
                null,
                null,
                linear,
                square,
                null,
                13,
                Merv.Edition.ED_2017,
                0.5);
    }

    private static Input input(
            double highCfm,
            double lowCfm,
            double altitudeM,
            double limitPa,
            double otherPa,
            @Nullable Double coolingW,
            Rules rules,
            List<Candidate> candidates) {
        return new Input(
                highCfm * CFM,
                lowCfm * CFM,
                0.2,
                altitudeM,
                20,
                FanKind.CONSTANT_FLOW,
                limitPa,
                otherPa,
                0.12,
                List.of(),
                coolingW,
                0.25,
                HOUSE,
                rules,
                candidates,
                List.of());
    }

    private static Output size(Input input) {
        return FilterSizing.CALCULATION.calculate(input).output();
    }

    private static Output size(Candidate... candidates) {
        return size(input(450, 200, 15, 125, 62, null, Rules.USUAL, List.of(candidates)));
    }

    @Test
    void face_velocity_by_nominal_and_by_actual_size() {
        Option option = size(input(1200, 0, 0, 125, 62, null, Rules.USUAL, List.of(inches("a", 20, 25, 1, 14, 9))))
                .options()
                .get(0);

        row("R-FIL-03", "computed by own Python")
                .near(option.faceMPerS() / FPM, 345.60, rel(1e-4))
                .near(option.actualFaceMPerS() / FPM, 361.70, rel(1e-4));
    }

    /** The three invented houses: printed face velocity (m/s) and clean drops (Pa), worked by hand. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "mountain valley, 20, 25, 1, 14,  9, 500, 230, 2350, 0.73, 13.9, 5.5",
        "north woods,     20, 20, 2, 14,  9, 700, 320,  430, 0.64, 12.5, 4.8",
        "coast,           16, 25, 1, 17, 11, 450, 200,   15, 0.82, 21.4, 7.7",
    })
    void clean_drops_of_the_demo_houses(
            String house,
            double width,
            double height,
            int count,
            double a,
            double b,
            double high,
            double low,
            double altitude,
            double face,
            double dropHigh,
            double dropLow) {
        Output out = size(input(
                high, low, altitude, 125, 62, null, Rules.USUAL, List.of(inches("f", width, height, count, a, b))));

        Option option = out.options().get(0);
        assertThat(option.faceMPerS()).isCloseTo(face, within(0.005));
        assertThat(option.cleanHighPa()).isCloseTo(dropHigh, within(0.06));
        assertThat(option.cleanLowPa()).isCloseTo(dropLow, within(0.05));
        assertThat(option.verdict()).isEqualTo(Verdict.PASSES);
        assertThat(out.best()).isEqualTo("f");
    }

    @Test
    void a_small_filter_fails_and_says_which_limit_and_by_how_much() {
        Output out = size(inches("small", 14, 20, 1, 17, 11));

        assertThat(out.options().get(0).verdict()).isEqualTo(Verdict.FAILS);
        assertThat(out.options().get(0).reason())
                .contains("Face 1.18, at most 1.00 m/s: fails.")
                .contains("Clean drop 35.2, at most 25.0 Pa: fails.");
        assertThat(out.best()).isNull();
        assertThat(out.notices()).extracting(Notice::code).contains("none-passes");
    }

    @Test
    void a_limit_inside_the_uncertainty_of_the_curve_is_not_proven() {
        Rules doubtful = new Rules(1.0, 22, 2.0, 0.15, 0, 0);
        Input in = input(450, 200, 15, 125, 62, null, doubtful, List.of(inches("f", 16, 25, 1, 17, 11)));

        assertThat(size(in).options().get(0).verdict()).isEqualTo(Verdict.NOT_PROVEN);
    }

    @Test
    void a_loaded_filter_beyond_the_static_budget_fails_and_costs_airflow() {
        Option option = size(input(450, 200, 15, 100, 70, null, Rules.USUAL, List.of(inches("f", 16, 25, 1, 17, 11))))
                .options()
                .get(0);

        assertThat(option.verdict()).isEqualTo(Verdict.FAILS);
        assertThat(option.usedUpLoad()).isBetween(1.39, 1.41);
        assertThat(option.cleanFlowM3PerS()).isCloseTo(450 * CFM, within(1e-12));
        assertThat(option.loadedFlowM3PerS()).isLessThan(450 * CFM);
        assertThat(option.loadedStaticPa()).isCloseTo(100, within(1e-6));
    }

    @Test
    void air_over_the_coil_fails_a_filter_only_where_the_filter_is_to_blame() {
        double ton = 12000 * 1055.05585262 / 3600;
        List<Candidate> one = List.of(inches("f", 16, 25, 1, 17, 11));
        // 450 cfm held: 360 cfm per ton with any filter that the budget carries
        assertThat(size(input(450, 200, 0, 125, 62, 1.25 * ton, Rules.USUAL, one))
                        .options()
                        .get(0)
                        .coilAir())
                .isEqualTo(CoilAir.ENOUGH);
        // 281 cfm per ton already by design
        Output byDesign = size(input(450, 200, 0, 125, 62, 1.6 * ton, Rules.USUAL, one));
        assertThat(byDesign.options().get(0).coilAir()).isEqualTo(CoilAir.BELOW_ALARM);
        assertThat(byDesign.options().get(0).verdict()).isEqualTo(Verdict.PASSES);
        assertThat(byDesign.notices()).extracting(Notice::code).contains("design-airflow-low");
        // the same airflow in thin air is less air
        assertThat(size(input(450, 200, 2350, 125, 62, 1.25 * ton, Rules.USUAL, one))
                        .options()
                        .get(0)
                        .coilAir())
                .isEqualTo(CoilAir.BELOW_ALARM);
    }

    @Test
    void a_fan_without_speed_control_says_what_it_really_gives_and_where_its_table_ends() {
        Input in = input(450, 200, 0, 125, 62, null, Rules.USUAL, List.of(inches("f", 16, 25, 1, 17, 11)));

        Option weak = size(fan(in, FanKind.TABLE, 300, 120, 500, 40)).options().get(0);
        assertThat(weak.cleanFlowM3PerS()).isLessThan(0.95 * 450 * CFM);
        assertThat(weak.reason()).contains("The fan gives only");
        assertThat(weak.verdict()).isEqualTo(Verdict.PASSES);

        Option ends = size(fan(in, FanKind.TABLE, 455, 95, 500, 70)).options().get(0);
        assertThat(ends.reason()).contains("does not reach the loaded filter");
        assertThat(ends.verdict()).isEqualTo(Verdict.FAILS);
        // a line goes on where a table ends
        assertThat(size(fan(in, FanKind.CONSTANT_TORQUE, 455, 95, 500, 70))
                        .options()
                        .get(0)
                        .verdict())
                .isEqualTo(Verdict.PASSES);
    }

    private static Input fan(Input in, FanKind kind, double firstCfm, double firstPa, double lastCfm, double lastPa) {
        return new Input(
                in.highM3PerS(),
                in.lowM3PerS(),
                in.highShareFraction(),
                in.altitudeM(),
                in.airC(),
                kind,
                in.staticLimitPa(),
                in.otherStaticPa(),
                in.fanFraction(),
                List.of(
                        new FilterSizing.FanPoint(firstCfm * CFM, firstPa),
                        new FilterSizing.FanPoint(lastCfm * CFM, lastPa)),
                in.coolingW(),
                in.electricityCostPerKWh(),
                in.house(),
                in.rules(),
                in.candidates(),
                in.ratedPoints());
    }

    @Test
    void the_makers_final_resistance_brings_the_change_forward() {
        Candidate c = inches("f", 16, 25, 1, 17, 11);
        Candidate bounded = new Candidate(
                c.id(),
                c.label(),
                c.widthM(),
                c.heightM(),
                c.depthM(),
                1,
                null,
                null,
                null,
                null,
                17.0,
                11.0,
                30.0,
                13,
                Merv.Edition.ED_2017,
                0.5);

        Option option = size(bounded).options().get(0);

        assertThat(option.loadedPa()).isEqualTo(30);
        assertThat(option.changeAtLoad()).isCloseTo(30 / option.cleanHighPa(), within(1e-12));
    }

    @Test
    void refuses_candidates_that_contradict_themselves() {
        Candidate f = inches("f", 16, 25, 1, 17, 11);
        assertRefused("candidates[1].id", f, f);
        Candidate bare = new Candidate(
                "g", "g", 0.4, 0.6, 0.1, 1, null, null, null, null, null, null, null, 13, Merv.Edition.ED_2017, 0.5);
        assertRefused("candidates[1].linearPaSPerM", f, bare);
        Candidate swollen = new Candidate(
                "g", "g", 0.4, 0.6, 0.1, 1, 0.41, null, null, null, 17.0, 11.0, null, 13, Merv.Edition.ED_2017, 0.5);
        assertRefused("candidates[0].actualWidthM", swollen);
        Input good = input(450, 200, 15, 125, 62, null, Rules.USUAL, List.of(f));
        assertRefused("ratedPoints[0].candidate", with(good, List.of(new RatedPoint("h", 0.2, 20)), good.fanKind()));
        assertRefused("candidates[0].linearPaSPerM", with(good, List.of(new RatedPoint("f", 0.2, 20)), good.fanKind()));
        assertRefused("fanTable", with(good, List.of(), FanKind.TABLE));
        assertRefused("otherStaticPa", input(450, 200, 15, 62, 62, null, Rules.USUAL, List.of(f)));
        assertRefused("lowM3PerS", input(450, 451, 15, 125, 62, null, Rules.USUAL, List.of(f)));
    }

    private static Input with(Input in, List<RatedPoint> points, FanKind fan) {
        return new Input(
                in.highM3PerS(),
                in.lowM3PerS(),
                in.highShareFraction(),
                in.altitudeM(),
                in.airC(),
                fan,
                in.staticLimitPa(),
                in.otherStaticPa(),
                in.fanFraction(),
                in.fanTable(),
                in.coolingW(),
                in.electricityCostPerKWh(),
                in.house(),
                in.rules(),
                in.candidates(),
                points);
    }

    private static void assertRefused(String field, Candidate... candidates) {
        assertRefused(field, input(450, 200, 15, 125, 62, null, Rules.USUAL, List.of(candidates)));
    }

    private static void assertRefused(String field, Input input) {
        assertThatThrownBy(() -> size(input))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused ->
                                assertThat(refused.violations().get(0).field()).isEqualTo(field));
    }

    @Property(tries = 100)
    void more_face_area_never_costs_more_drop_or_power(
            @ForAll @DoubleRange(min = 10, max = 25) double width,
            @ForAll @DoubleRange(min = 1, max = 10) double more,
            @ForAll @IntRange(min = 1, max = 3) int count) {
        List<Option> options = size(
                        inches("less", width, 25, count, 14, 9), inches("more", width + more, 25, count, 14, 9))
                .options();
        Option less =
                options.stream().filter(o -> o.id().equals("less")).findFirst().orElseThrow();
        Option larger =
                options.stream().filter(o -> o.id().equals("more")).findFirst().orElseThrow();

        assertThat(larger.cleanHighPa()).isLessThan(less.cleanHighPa());
        assertThat(larger.cleanLowPa()).isLessThan(less.cleanLowPa());
        assertThat(larger.fanLowW()).isLessThan(less.fanLowW());
        assertThat(larger.usedUpLoad()).isGreaterThan(less.usedUpLoad());
    }

    @Property(tries = 50)
    void the_order_of_asking_does_not_change_the_ranking(
            @ForAll @Size(6) List<@DoubleRange(min = 10, max = 30) Double> widths, @ForAll long seed) {
        List<Candidate> candidates = new ArrayList<>();
        for (int i = 0; i < widths.size(); i++) {
            candidates.add(inches("f" + i, widths.get(i), 25, 1, 14, 9));
        }
        List<Candidate> shuffled = new ArrayList<>(candidates);
        Collections.shuffle(shuffled, new Random(seed));

        assertThat(size(shuffled.toArray(new Candidate[0])).options())
                .isEqualTo(size(candidates.toArray(new Candidate[0])).options());
    }
}
