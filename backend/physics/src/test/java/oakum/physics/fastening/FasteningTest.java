package oakum.physics.fastening;

import static oakum.physics.checkrow.CheckRow.abs;
import static oakum.physics.checkrow.CheckRow.rel;
import static oakum.physics.checkrow.CheckRow.row;
import static oakum.physics.fastening.Imperial.FOOT_M;
import static oakum.physics.fastening.Imperial.INCH_M;
import static oakum.physics.fastening.Imperial.POUND_N;
import static oakum.physics.fastening.Imperial.POUND_PER_INCH_N_PER_M;
import static oakum.physics.fastening.Imperial.POUND_PER_SQUARE_FOOT_PA;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FasteningTest {
    private static final String INDEPENDENT = "computed by independent code from the printed equations";

    private static double poundsPerInch(Fastener fastener, double gravity, double diameterIn) {
        return fastener.withdrawalNPerM(gravity, diameterIn * INCH_M) / POUND_PER_INCH_N_PER_M;
    }

    /** The first worked example with some inputs changed; an empty value leaves the input out. */
    private static <I extends Record, O extends Record> O changed(
            Calculation<I, O> calculation, Map<String, String> changes) {
        Map<String, String> inputs =
                new LinkedHashMap<>(calculation.workedExamples().get(0).inputs());
        inputs.putAll(changes);
        inputs.values().removeIf(String::isEmpty);
        return calculation
                .calculate(Canonical.read(calculation.inputType(), inputs))
                .output();
    }

    @Test
    void a_plain_nail_as_in_the_solved_example() {
        FastenerWithdrawal.Result result = changed(FastenerWithdrawal.CALCULATION, Map.of());

        row("FA-1", "AWC Structural Wood Design Solved Example Problems E2.1a, as an open test quotes it, seen")
                .near(result.withdrawalNPerM() / POUND_PER_INCH_N_PER_M, 20.67, rel(.001))
                .near(result.withdrawalNPerM(), 3619.3, rel(.001))
                .near(result.penetrationM() / INCH_M, 2.395, rel(.001))
                .near(result.allowableN() / POUND_N, 49.5, rel(.001))
                .near(result.allowableN(), 220.2, rel(.001));
    }

    @Test
    void withdrawal_of_nails_and_screws() {
        row("FA-2", INDEPENDENT + "; NDS table from memory 32, 36, 40")
                .near(poundsPerInch(Fastener.PLAIN_NAIL, .50, .131), 31.96, abs(.05))
                .near(poundsPerInch(Fastener.PLAIN_NAIL, .50, .148), 36.10, abs(.05))
                .near(poundsPerInch(Fastener.PLAIN_NAIL, .50, .162), 39.52, abs(.05));
        row("FA-3", INDEPENDENT)
                .near(poundsPerInch(Fastener.RING_SHANK_NAIL, .42, .113), 35.9, abs(.1))
                .near(poundsPerInch(Fastener.RING_SHANK_NAIL, .42, .120), 38.1, abs(.1))
                .near(poundsPerInch(Fastener.RING_SHANK_NAIL, .42, .131), 41.6, abs(.1));
        row("FA-4", INDEPENDENT).near(poundsPerInch(Fastener.SMOOTH_STAINLESS_NAIL, .42, .131), 16.6, abs(.1));
        row("FA-5", INDEPENDENT).near(poundsPerInch(Fastener.WOOD_SCREW, .42, .190), 95.5, abs(.2));
    }

    private static CladdingWind.Result wind(String zone) {
        return changed(CladdingWind.CALCULATION, Map.of("zone", zone));
    }

    @Test
    void wind_on_a_wall() {
        CladdingWind.Result corner = wind("CORNER");
        CladdingWind.Result field = wind("FIELD");

        row("WI-1", INDEPENDENT)
                .near(corner.velocityPa() / POUND_PER_SQUARE_FOOT_PA, 20.14, abs(.02))
                .near(corner.velocityPa(), 964, abs(1));
        row("WI-2", INDEPENDENT)
                .near(-corner.suctionPa() / POUND_PER_SQUARE_FOOT_PA, -31.83, abs(.05))
                .near(-corner.allowableSuctionPa() / POUND_PER_SQUARE_FOOT_PA, -19.10, abs(.05))
                .near(-field.suctionPa() / POUND_PER_SQUARE_FOOT_PA, -25.78, abs(.05))
                .near(-field.allowableSuctionPa() / POUND_PER_SQUARE_FOOT_PA, -15.47, abs(.05));
        double[] squareFeet = {20, 50, 100};
        double[] inField = {-1.047, -.977, -.923};
        double[] atCorner = {-1.294, -1.153, -1.047};
        for (int i = 0; i < squareFeet.length; i++) {
            double area = squareFeet[i] * FOOT_M * FOOT_M;
            row("WI-3", INDEPENDENT)
                    .near(WallZone.FIELD.suctionCoefficient(area), inField[i], abs(.003))
                    .near(WallZone.CORNER.suctionCoefficient(area), atCorner[i], abs(.003));
        }
        row("WI-4", INDEPENDENT)
                .near(WindExposure.C.coefficient(15 * FOOT_M), .849, abs(.002))
                .near(WindExposure.C.coefficient(20 * FOOT_M), .902, abs(.002))
                .near(WindExposure.C.coefficient(30 * FOOT_M), .982, abs(.002));
    }

    private static FastenerWithdrawal.Result boardNail(
            String fastener, double diameterIn, double penetrationIn, String moisture) {
        double suction = 19.10 * POUND_PER_SQUARE_FOOT_PA;
        double area = 2.0 / 3 * FOOT_M * FOOT_M;
        return changed(
                FastenerWithdrawal.CALCULATION,
                Map.of(
                        "fastener", fastener,
                        "diameterM", Canonical.text(diameterIn * INCH_M),
                        "lengthM", Canonical.text(2.5 * INCH_M),
                        "passesM", Canonical.text((2.5 - penetrationIn) * INCH_M),
                        "threadedM", Canonical.text(1.5 * INCH_M),
                        "durationFactor", "1.6",
                        "moisture", moisture,
                        "suctionPa", Canonical.text(suction),
                        "areaM2", Canonical.text(area)));
    }

    @Test
    void nails_of_a_board_in_the_wind() {
        FastenerWithdrawal.Result ring = boardNail("RING_SHANK_NAIL", .120, 1.25, "DRY");
        row("FA-6", INDEPENDENT)
                .near(Objects.requireNonNull(ring.demandN()) / POUND_N, 12.7, rel(.01))
                .near(ring.allowableN() / POUND_N, 76.2, rel(.01))
                .near(Objects.requireNonNull(ring.ratio()), .167, rel(.01))
                .exactly(ring.verdict(), Verdict.PASSES);

        FastenerWithdrawal.Result plain = boardNail("PLAIN_NAIL", .113, 1.0, "DRY");
        FastenerWithdrawal.Result green = boardNail("PLAIN_NAIL", .113, 1.0, "PASSES_19_PERCENT");
        row("FA-7", INDEPENDENT)
                .near(plain.allowableN() / POUND_N, 28.5, rel(.01))
                .near(Objects.requireNonNull(plain.ratio()), .446, rel(.01))
                .near(green.allowableN() / POUND_N, 7.13, rel(.01))
                .near(Objects.requireNonNull(green.ratio()), 1.79, rel(.01))
                .exactly(green.verdict(), Verdict.FAILS);
        assertThat(green.notices()).extracting(Notice::code).contains("moisture-takes-hold", "check-head-pull-through");
        assertThat(boardNail("RING_SHANK_NAIL", .120, 1.25, "PASSES_19_PERCENT").allowableN())
                .isEqualTo(ring.allowableN());
    }

    @Property
    void hold_grows_with_penetration_gravity_and_diameter(
            @ForAll Fastener fastener,
            @ForAll @Scale(4) @DoubleRange(min = .3, max = .85) double gravity,
            @ForAll @Scale(4) @DoubleRange(min = .001, max = .025) double diameterM,
            @ForAll @Scale(4) @DoubleRange(min = .011, max = .5) double lengthM) {
        assertThat(fastener.withdrawalNPerM(gravity + .01, diameterM))
                .isGreaterThan(fastener.withdrawalNPerM(gravity, diameterM));
        assertThat(fastener.withdrawalNPerM(gravity, diameterM * 1.1))
                .isGreaterThan(fastener.withdrawalNPerM(gravity, diameterM));
        assertThat(allowable(fastener, gravity, diameterM, lengthM * 1.1))
                .isGreaterThanOrEqualTo(allowable(fastener, gravity, diameterM, lengthM));
    }

    private static double allowable(Fastener fastener, double gravity, double diameterM, double lengthM) {
        return changed(
                        FastenerWithdrawal.CALCULATION,
                        Map.of(
                                "fastener", fastener.name(),
                                "gravity", Canonical.text(gravity),
                                "diameterM", Canonical.text(diameterM),
                                "lengthM", Canonical.text(lengthM),
                                "threadedM", "0.04",
                                "passesM", "0.01"))
                .allowableN();
    }

    @ParameterizedTest
    @CsvSource({
        "grain, END, no withdrawal from end grain",
        "passesM, 0.1, does not reach",
        "fastener, RING_SHANK_NAIL, only that part holds",
        "wood, OTHER, No specific gravity"
    })
    void refuses_what_holds_nothing_or_is_not_known(String input, String value, String message) {
        assertThatThrownBy(() -> changed(FastenerWithdrawal.CALCULATION, Map.of(input, value)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining(message);
    }

    @Test
    void only_nails_are_toe_nailed_and_a_lag_screw_keeps_three_quarters_in_end_grain() {
        Map<String, String> lag = Map.of("fastener", "LAG_SCREW", "threadedM", "0.04", "grain", "END");
        FastenerWithdrawal.Result result = changed(FastenerWithdrawal.CALCULATION, lag);

        assertThat(result.endGrainFactor()).isEqualTo(.75);
        assertThat(changed(FastenerWithdrawal.CALCULATION, Map.of("toeNailed", "true"))
                        .toeNailFactor())
                .isEqualTo(.67);
        assertThatThrownBy(() -> changed(
                        FastenerWithdrawal.CALCULATION,
                        Map.of("fastener", "WOOD_SCREW", "threadedM", "0.04", "toeNailed", "true")))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Only nails");
    }

    @Test
    void only_the_ringed_part_in_the_wood_holds() {
        Map<String, String> ring = Map.of("fastener", "RING_SHANK_NAIL", "threadedM", "0.02");

        assertThat(changed(FastenerWithdrawal.CALCULATION, ring).penetrationM()).isEqualTo(.02);
        assertThat(changed(FastenerWithdrawal.CALCULATION, Map.of("tipM", "0.01"))
                        .penetrationM())
                .isCloseTo(.0635 - .002667 - .01, within(1e-9));
    }

    @Test
    void panels_hold_by_an_equivalent_gravity() {
        assertThat(HoldingWood.PANEL.gravityFor(Fastener.PLAIN_NAIL)).isEqualTo(.40);
        assertThat(HoldingWood.PANEL.gravityFor(Fastener.RING_SHANK_NAIL)).isEqualTo(.70);
        assertThat(HoldingWood.PANEL.gravityFor(Fastener.LAG_SCREW)).isNull();
    }

    @Test
    void low_roofs_relieve_and_the_least_pressure_governs_in_still_places() {
        CladdingWind.Result low = changed(CladdingWind.CALCULATION, Map.of("roofSlopeDeg", "10"));
        CladdingWind.Result steep = changed(CladdingWind.CALCULATION, Map.of());
        CladdingWind.Result still = changed(CladdingWind.CALCULATION, Map.of("windMPerS", "20"));

        assertThat(low.suctionCoefficient()).isCloseTo(.9 * steep.suctionCoefficient(), within(1e-9));
        assertThat(still.suctionPa()).isCloseTo(16 * POUND_PER_SQUARE_FOOT_PA, within(.05));
        assertThat(still.notices()).extracting(Notice::code).contains("least-wind");
        assertThat(steep.notices()).extracting(Notice::code).containsExactly("no-pressure-equalisation");
    }

    @ParameterizedTest
    @CsvSource({
        "metal, BRIGHT_STEEL, outdoors",
        "board, TANNIC, tannic",
        "batten, TANNIC, tannic",
        "coastM, 900, coast",
        "horizontalOverFoam, true, horizontal-furring",
        "otherMetal, COPPER, one-metal"
    })
    void each_rule_of_corrosion_is_broken_alone(String input, String value, String rule) {
        FastenerCorrosion.Result result = changed(FastenerCorrosion.CALCULATION, Map.of(input, value));

        assertThat(result.rules().stream()
                        .filter(r -> r.verdict() == Verdict.FAILS)
                        .map(FastenerCorrosion.RuleResult::id))
                .containsExactly(rule);
        assertThat(result.verdict()).isEqualTo(Verdict.FAILS);
    }

    @Test
    void metals_that_last_are_named() {
        FastenerCorrosion.Result cedar = changed(
                FastenerCorrosion.CALCULATION, Map.of("board", "TANNIC", "metal", "STAINLESS_304", "coastM", "3000"));
        FastenerCorrosion.Result treated =
                changed(FastenerCorrosion.CALCULATION, Map.of("batten", "PRESERVATIVE_TREATED"));

        assertThat(cedar.lasting()).isEqualTo("stainless 304, stainless 316");
        assertThat(cedar.verdict()).as("316 is advised at 3 km").isEqualTo(Verdict.NOT_PROVEN);
        assertThat(treated.verdict()).isEqualTo(Verdict.PASSES);
        assertThat(treated.rules()).extracting(FastenerCorrosion.RuleResult::id).contains("treated");
    }

    @Test
    void screws_alone_are_a_bound() {
        FurringScrews.Result result = changed(FurringScrews.CALCULATION, Map.of());
        FurringScrews.Result heavy = changed(FurringScrews.CALCULATION, Map.of("weightN", "115"));

        assertThat(result.stiffnessNPerM() / 1000).isCloseTo(62.5, within(.1));
        assertThat(1000 * result.sagM()).isCloseTo(.72, within(.005));
        assertThat(result.notices()).extracting(Notice::code).isEqualTo(List.of("bound-only"));
        assertThat(heavy.notices()).extracting(Notice::code).contains("screws-alone-sag");
        assertThat(changed(FurringScrews.CALCULATION, Map.of("penetrationM", "0.038"))
                        .penetration())
                .isEqualTo(Verdict.FAILS);
    }
}
