package oakum.physics.envelope;

import static oakum.physics.checkrow.CheckRow.abs;
import static oakum.physics.checkrow.CheckRow.rel;
import static oakum.physics.checkrow.CheckRow.row;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oakum.physics.calculation.Answer;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Refused;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class AssemblyResistanceTest {
    private static final String COMPUTED = "ISO 6946, computed by two independent programs";
    private static final double IP = 0.17611;

    private static Placement wall(double inside, double outside) {
        return new Placement(AssemblyKind.WALL, null, inside, outside);
    }

    private static Answer<AssemblyResistance.Input, AssemblyResistance.Output> answer(
            Placement placement, TestLayer... layers) {
        return AssemblyResistance.CALCULATION.calculate(new AssemblyResistance.Input(
                placement, Arrays.stream(layers).map(TestLayer::row).toList(), null, null, List.of()));
    }

    private static AssemblyResistance.Output of(Placement placement, TestLayer... layers) {
        return answer(placement, layers).output();
    }

    private static List<String> codes(Answer<?, ?> answer) {
        return answer.notices().stream().map(Notice::code).toList();
    }

    @Test
    void a_framed_wall_of_a_government_guide() {
        AssemblyResistance.Output wall = of(
                wall(0.13, 0.04),
                TestLayer.solid("plasterboard", 0.0125, 0.21),
                TestLayer.solid("wool", 0.140, 0.04).wood(0.15),
                TestLayer.solid("sheathing", 0.009, 0.13),
                TestLayer.resistance("cavity", 0.18),
                TestLayer.solid("brick", 0.102, 0.77));

        row("TH-1", "government guide to U-values by the combined method, example of a framed wall, seen in a copy")
                .near(wall.upperLimitM2KPerW(), 3.4350, abs(0.001))
                .near(wall.lowerLimitM2KPerW(), 3.3035, abs(0.001))
                .near(wall.uValueWPerM2K(), 0.2968, abs(0.001))
                .near(wall.errorFraction(), 0.0195, abs(0.0001));
    }

    @Test
    void a_double_stud_wall_whose_rows_stand_independently() {
        AssemblyResistance.Output wall = of(
                wall(0.13, 0.13),
                TestLayer.solid("gypsum", 0.0125, 0.25),
                TestLayer.solid("inner", 0.089, 0.040).wood(0.12),
                TestLayer.solid("gap", 0.127, 0.040),
                TestLayer.solid("outer", 0.089, 0.040).wood(0.25),
                TestLayer.solid("osb", 0.012, 0.13));

        row("TH-2", COMPUTED)
                .near(wall.upperLimitM2KPerW(), 7.379, abs(0.002))
                .near(wall.lowerLimitM2KPerW(), 6.855, abs(0.002))
                .near(wall.resistanceM2KPerW(), 7.117, abs(0.002))
                .near(wall.uValueWPerM2K(), 0.1405, abs(0.002));
    }

    @Test
    void more_framing_lets_more_heat_through() {
        row("TH-3", COMPUTED)
                .near(studWall(0.15), 0.3095, abs(0.0003))
                .near(studWall(0.23), 0.3429, abs(0.0003))
                .near(studWall(0.25), 0.3512, abs(0.0003));
    }

    private static double studWall(double framing) {
        return of(
                        wall(0.13, 0.13),
                        TestLayer.solid("gypsum", 0.0125, 0.25),
                        TestLayer.solid("wool", 0.140, 0.038).wood(framing),
                        TestLayer.solid("osb", 0.011, 0.13))
                .uValueWPerM2K();
    }

    @Test
    void a_slightly_ventilated_layer_lies_between_still_and_ventilated() {
        row("TH-4", "ISO 6946:2017, from memory; " + COMPUTED)
                .near(slightly(500e-6), 3.0, abs(1e-12))
                .near(slightly(1000e-6), 2.8, abs(1e-12))
                .near(slightly(1500e-6), 2.6, abs(1e-12));
    }

    /** A wall of 3.0 with a still cavity and 2.6 with a well-ventilated one. */
    private static double slightly(double openingM2PerM) {
        return of(
                        wall(0.13, 0.13),
                        TestLayer.resistance("inside", 2.34),
                        resistantAir(0.20, openingM2PerM),
                        TestLayer.resistance("cladding", 0.20))
                .resistanceM2KPerW();
    }

    private static TestLayer resistantAir(double resistance, double openingM2PerM) {
        return TestLayer.resistance("cavity", resistance).opening(openingM2PerM);
    }

    @Test
    void fasteners_through_the_insulation() {
        FastenerRow stainless = new FastenerRow("screws", "wool", 17, 0.006, 5, null);

        row("TH-5", COMPUTED).near(stainless.addedWPerM2K(0.150, 4.1667 / 6.1667), 0.00585, rel(0.01));
        assertThat(new FastenerRow("plastic", "wool", 0.5, 0.006, 5, null).addedWPerM2K(0.150, 0.7))
                .isZero();
        assertThat(new FastenerRow("recessed", "wool", 17, 0.006, 5, 0.075).addedWPerM2K(0.150, 0.7))
                .isCloseTo(
                        new FastenerRow("through", "wool", 17, 0.006, 5, null).addedWPerM2K(0.150, 0.7) / 2,
                        within(1e-12));
    }

    @Test
    void gaps_in_the_insulation() {
        row("TH-6", COMPUTED)
                .near(AirGaps.WARM_TO_COLD.addedWPerM2K(0.8), 0.0064, abs(1e-12))
                .near(AirGaps.WITH_AIR_MOVING.addedWPerM2K(0.8), 0.0256, abs(1e-12))
                .near(AirGaps.NONE.addedWPerM2K(0.8), 0, abs(0));
    }

    @Test
    void corrections_add_to_the_u_value() {
        AssemblyResistance.Input input = new AssemblyResistance.Input(
                wall(0.13, 0.04),
                List.of(TestLayer.solid("wool", 0.150, 0.036).row()),
                AirGaps.WARM_TO_COLD,
                "wool",
                List.of(new FastenerRow("screws", "wool", 50, 0.006, 5, null)));
        AssemblyResistance.Output wall =
                AssemblyResistance.CALCULATION.calculate(input).output();

        assertThat(wall.uValueWPerM2K())
                .isCloseTo(1 / wall.resistanceM2KPerW() + wall.gapsWPerM2K() + wall.fastenersWPerM2K(), within(1e-12));
        assertThat(wall.gapsWPerM2K()).isCloseTo(0.01 * Math.pow(4.16667 / 4.33667, 2), within(1e-5));
        assertThat(wall.fastenersWPerM2K()).isPositive();
    }

    @Test
    void parallel_path_and_isothermal_planes_in_inch_pound() {
        AssemblyResistance.Output wall = of(
                wall(0.68 * IP, 0.17 * IP),
                TestLayer.resistance("gypsum", 0.45 * IP),
                TestLayer.resistance("batt", 21 * IP).framed(0.25, 0.05 / (6.875 * IP)),
                TestLayer.resistance("osb", 0.62 * IP),
                TestLayer.resistance("siding", 0.81 * IP));

        row("TH-7", "ASHRAE Fundamentals ch. 25, computed by two independent programs")
                .near(wall.parallelPathWPerM2K() * IP, 0.05763, abs(0.0002))
                .near(wall.upperLimitM2KPerW() / IP, 17.35, abs(0.05))
                .near(wall.lowerLimitM2KPerW() / IP, 16.60, abs(0.05))
                .near(wall.resistanceM2KPerW() / IP, 16.98, abs(0.05));
    }

    @Test
    void still_air_layers_resist_by_thickness_and_direction() {
        row("TH-8", "ISO 6946:2007 table, seen in a copy; interpolated by two independent programs")
                .near(HeatFlow.UP.airLayerM2KPerW(0.012), 0.154, abs(0.001))
                .near(HeatFlow.DOWN.airLayerM2KPerW(0.075), 0.215, abs(0.001));
    }

    @Test
    void walls_of_the_demo_houses() {
        AssemblyResistance.Output h1 = of(
                new Placement(AssemblyKind.WALL, Outside.OUTDOOR_AIR, null, null),
                TestLayer.solid("gypsum", 0.013, 0.16),
                TestLayer.resistance("service", 0.16),
                TestLayer.solid("studs", 0.140, 0.040).wood(0.20),
                TestLayer.solid("plywood", 0.012, 0.12),
                TestLayer.of("membrane", 0).sd(0.14),
                TestLayer.solid("board", 0.150, 0.036),
                TestLayer.air("cavity", 0.038, AirLayerVentilation.WELL),
                TestLayer.solid("cladding", 0.020, 0.12));

        row("TH-9", "ISO 6946, computed by one program")
                .near(h1.upperLimitM2KPerW(), 7.665, abs(0.003))
                .near(h1.lowerLimitM2KPerW(), 7.268, abs(0.003))
                .near(h1.uValueWPerM2K(), 0.1339, abs(0.0003));
        AssemblyResistance.Output h2 = doubleStud(0.127);
        row("TH-10", "ISO 6946, computed by one program")
                .near(h2.upperLimitM2KPerW(), 7.527, abs(0.003))
                .near(h2.lowerLimitM2KPerW(), 6.955, abs(0.003))
                .near(h2.uValueWPerM2K(), 0.1381, abs(0.0003))
                .near(doubleStud(0.076).uValueWPerM2K(), 0.1680, abs(0.0003));
    }

    private static AssemblyResistance.Output doubleStud(double gapM) {
        return of(
                new Placement(AssemblyKind.WALL, null, null, null),
                TestLayer.solid("gypsum", 0.013, 0.16),
                TestLayer.resistance("service", 0.16),
                TestLayer.solid("inner", 0.089, 0.040).wood(0.20),
                TestLayer.solid("gap", gapM, 0.040),
                TestLayer.solid("outer", 0.089, 0.040).wood(0.20),
                TestLayer.solid("plywood", 0.012, 0.12),
                TestLayer.air("cavity", 0.019, AirLayerVentilation.WELL),
                TestLayer.solid("boards", 0.022, 0.12));
    }

    @Test
    void roofs_of_the_demo_houses() {
        Placement roof = new Placement(AssemblyKind.ROOF, Outside.VENTED_ATTIC, null, null);
        row("TH-11", "ISO 6946, computed by one program")
                .near(roof(roof, 0.406, 0.08), 0.1070, abs(0.0003))
                .near(roof(roof, 0.560, 0), 0.0688, abs(0.0003))
                .near(roof(roof, 0.480, 0), 0.0797, abs(0.0003));
    }

    private static double roof(Placement roof, double depthM, double wood) {
        return of(
                        roof,
                        TestLayer.solid("gypsum", 0.013, 0.16),
                        TestLayer.resistance("service", 0.16),
                        TestLayer.solid("plywood", 0.012, 0.12),
                        TestLayer.solid("cellulose", depthM, 0.040).wood(wood))
                .uValueWPerM2K();
    }

    @Test
    void says_which_values_were_used_and_lets_typed_ones_win() {
        AssemblyResistance.Output wall = of(
                wall(0.13, 0.04),
                TestLayer.library("typed", 0.012, "plywood").conductivity(0.12),
                TestLayer.library("listed", 0.012, "plywood"));

        assertThat(wall.layers().get(0).conductivityWPerMK()).isEqualTo(0.12);
        assertThat(wall.layers().get(0).valuesFrom()).isEqualTo("conductivity typed");
        assertThat(wall.layers().get(1).conductivityWPerMK()).isEqualTo(0.13);
        assertThat(wall.layers().get(1).valuesFrom()).startsWith("library, Plywood, softwood: EN 12524");
    }

    @Test
    void framing_that_stands_on_framing_bridges_more_than_framing_that_crosses() {
        AssemblyResistance.Output crossing = studsAndFurring(null);
        AssemblyResistance.Output aligned = studsAndFurring("studs");

        assertThat(aligned.upperLimitM2KPerW()).isLessThan(crossing.upperLimitM2KPerW());
        assertThat(aligned.lowerLimitM2KPerW()).isCloseTo(crossing.lowerLimitM2KPerW(), within(1e-12));
    }

    private static AssemblyResistance.Output studsAndFurring(@Nullable String on) {
        TestLayer furring = TestLayer.solid("furring", 0.050, 0.036).wood(0.10);
        return of(
                wall(0.13, 0.04),
                TestLayer.solid("studs", 0.140, 0.036).wood(0.20),
                on == null ? furring : furring.on(on));
    }

    @Test
    void findings_say_why_a_wall_is_described_wrongly() {
        TestLayer[] ventilated = {
            TestLayer.solid("studs", 0.140, 0.036).wood(0.10), TestLayer.air("cavity", 0.019, AirLayerVentilation.WELL)
        };
        assertThat(codes(answer(wall(0.13, 0.04), ventilated)))
                .contains("surface-to-wind-behind-ventilated-layer", "framing-from-spacing-alone");
        assertThat(codes(answer(new Placement(AssemblyKind.WALL, null, null, null), ventilated)))
                .doesNotContain("surface-to-wind-behind-ventilated-layer");
        assertThat(codes(answer(
                        wall(0.13, 0.04),
                        TestLayer.solid("wool", 0.140, 0.036),
                        TestLayer.library("sheet", 0, "polyethylene"))))
                .contains("tight-layer-on-cold-side");
        assertThat(codes(answer(
                        wall(0.13, 0.04),
                        TestLayer.library("sheet", 0, "polyethylene"),
                        TestLayer.solid("wool", 0.140, 0.036))))
                .doesNotContain("tight-layer-on-cold-side");
        assertThat(codes(answer(
                        wall(0.13, 0.04),
                        TestLayer.solid("wool", 0.140, 0.036),
                        TestLayer.air("cavity", 0.019, AirLayerVentilation.NONE),
                        TestLayer.solid("boards", 0.022, 0.12))))
                .contains("air-layer-behind-cladding-counted");
        assertThat(codes(answer(
                        wall(0.13, 0.04),
                        TestLayer.solid("wool", 0.140, 0.036),
                        TestLayer.air("cavity", 0.019, AirLayerVentilation.NONE).opening(0.002))))
                .contains("opening-decides-ventilation");
    }

    @Test
    void metal_framing_is_no_evidence() {
        assertThat(answer(
                                wall(0.13, 0.04),
                                TestLayer.solid("wool", 0.140, 0.036).framed(0.01, 50))
                        .rejected())
                .isTrue();
        assertThat(codes(answer(
                        wall(0.01, 0.01),
                        TestLayer.solid("wool", 0.2, 0.02).framed(0.2, 3),
                        TestLayer.solid("board", 0.05, 0.02))))
                .contains("limits-too-far-apart");
    }

    @Test
    void refuses_by_layer_and_value() {
        refuses("\"bare\" (layers[0]) has neither", TestLayer.of("bare", 0.1));
        refuses("\"flat\" (layers[0].thicknessM) has no thickness", TestLayer.solid("flat", 0, 0.04));
        refuses(
                "share of framing of 0.2",
                TestLayer.solid("wool", 0.1, 0.04).framed(0.2, 0.12).noFraming());
        refuses("no material \"nothing\"", TestLayer.library("wool", 0.1, "nothing"));
        refuses("needs a short name of its own", TestLayer.solid("a", 0.1, 0.04), TestLayer.solid("a", 0.1, 0.04));
        refuses("no layer further in", TestLayer.solid("a", 0.1, 0.04).wood(0.1).on("b"));
        refuses("table ends below 0.3 m", TestLayer.air("attic", 0.5, AirLayerVentilation.NONE));
        refuses("500 to 1500 mm²", TestLayer.air("cavity", 0.02, AirLayerVentilation.SLIGHTLY));
        refuses(
                "only open as they get wetter",
                TestLayer.of("membrane", 0).sd(1).sdWet(2));
        refuses("needs the dry cup", TestLayer.of("membrane", 0).sdWet(2));
    }

    private static void refuses(String because, TestLayer... layers) {
        assertThatThrownBy(() -> of(wall(0.13, 0.04), layers))
                .isInstanceOf(Refused.class)
                .hasMessageContaining(because);
    }

    @Property
    void the_u_value_lies_between_its_limits_and_a_further_layer_never_raises_it(
            @ForAll @DoubleRange(min = 0.01, max = 0.5) double thickness,
            @ForAll @DoubleRange(min = 0.02, max = 2) double conductivity,
            @ForAll @DoubleRange(max = 1) double framing,
            @ForAll @DoubleRange(min = 0.02, max = 5) double framingConductivity,
            @ForAll @DoubleRange(max = 1) double furring,
            @ForAll @DoubleRange(min = 0.01, max = 0.5) double further,
            @ForAll boolean aligned) {
        TestLayer outer = TestLayer.solid("furring", 0.05, 0.036).framed(furring, framingConductivity);
        List<TestLayer> layers = new ArrayList<>(List.of(
                TestLayer.solid("studs", thickness, conductivity).framed(framing, framingConductivity),
                aligned ? outer.on("studs") : outer));
        AssemblyResistance.Output before = of(wall(0.13, 0.04), layers.toArray(new TestLayer[0]));
        layers.add(TestLayer.solid("board", further, 0.036));
        AssemblyResistance.Output after = of(wall(0.13, 0.04), layers.toArray(new TestLayer[0]));

        assertThat(before.lowerLimitM2KPerW()).isLessThanOrEqualTo(before.upperLimitM2KPerW() + 1e-9);
        assertThat(before.uValueWPerM2K())
                .isBetween(before.parallelPathWPerM2K() - 1e-9, before.isothermalPlanesWPerM2K() + 1e-9);
        assertThat(after.uValueWPerM2K()).isLessThanOrEqualTo(before.uValueWPerM2K() + 1e-12);
    }
}
