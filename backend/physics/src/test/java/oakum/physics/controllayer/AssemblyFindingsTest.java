package oakum.physics.controllayer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import oakum.physics.controllayer.AssemblyFindings.AssemblyLayer;
import oakum.physics.controllayer.AssemblyFindings.Input;
import oakum.physics.controllayer.AssemblyFindings.OuterMembrane;
import oakum.physics.controllayer.AssemblyFindings.Result;
import oakum.physics.envelope.AirLayerVentilation;
import oakum.physics.envelope.AssemblyKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each rule broken and mended in turn; the rules are those of the trade's own sheets. */
class AssemblyFindingsTest {
    private static final OuterMembrane CLOSED_ONLY = new OuterMembrane("membrane", 90, false, 0.0, 0.0);
    private static final OuterMembrane FOR_LIGHT = new OuterMembrane("membrane", 180, true, 0.020, 0.20);

    private static AssemblyLayer layer(String id, Double dry, Double wet, Control... controls) {
        return new AssemblyLayer(
                id,
                id,
                0.012,
                null,
                dry,
                wet,
                List.of(controls).stream().map(LayerControl::first).toList(),
                null,
                null);
    }

    private static AssemblyLayer cavity(double depthM) {
        return new AssemblyLayer(
                "cavity",
                "cavity",
                depthM,
                null,
                null,
                null,
                List.of(LayerControl.first(Control.DRAIN)),
                AirLayerVentilation.WELL,
                EdgeState.OPEN);
    }

    /** A double-stud wall with nothing wrong. */
    private static List<AssemblyLayer> wall() {
        return new ArrayList<>(List.of(
                layer("gypsum", 0.7, null),
                layer("inner", 4.37, 0.29, Control.VAPOUR),
                layer("studs", 0.61, null, Control.THERMAL),
                layer("plywood", 3.5, 0.35, Control.AIR),
                layer("membrane", 0.117, null, Control.WATER),
                cavity(0.021),
                layer("boards", null, null, Control.RAIN)));
    }

    private static Cladding cladding(UnaryOperator<Draft> change) {
        return change.apply(new Draft()).cladding();
    }

    private static final class Draft {
        private BoardDirection boards = BoardDirection.HORIZONTAL;
        private BattenDirection battens = BattenDirection.VERTICAL;
        private Double counter = 0.0;
        private Double joint = 0.0;
        private EdgeState bottom = EdgeState.OPEN;
        private EdgeState top = EdgeState.OPEN;
        private Boolean screen = true;

        Cladding cladding() {
            return new Cladding(
                    boards, "spruce", 0.12, 0.022, joint, battens, 0.021, 0.6, counter, bottom, top, 0.015, 0.01,
                    screen, 0.5);
        }
    }

    private static Result of(List<AssemblyLayer> layers, Cladding cladding, OuterMembrane membrane, Double sunDays) {
        return AssemblyFindings.CALCULATION
                .calculate(new Input(AssemblyKind.WALL, null, layers, cladding, membrane, sunDays))
                .output();
    }

    private static List<String> rules(Result result) {
        return result.findings().stream().map(Finding::id).toList();
    }

    @Test
    void a_wall_with_nothing_wrong_has_no_finding() {
        Result result = of(wall(), cladding(d -> d), CLOSED_ONLY, 59.0);

        assertThat(result.findings()).isEmpty();
        assertThat(result.sdInsideM()).isCloseTo(0.7 + 4.37, within(1e-9));
        assertThat(result.sdOutsideM()).isCloseTo(0.35 + 0.117, within(1e-9));
    }

    @Test
    void closed_on_both_sides_fails_until_one_side_opens() {
        List<AssemblyLayer> closed = wall();
        closed.set(1, layer("inner", 100.0, null, Control.VAPOUR));
        closed.add(4, layer("foam", 1500.0, null, Control.THERMAL));
        List<AssemblyLayer> openInside = new ArrayList<>(closed);
        openInside.set(1, layer("inner", 4.37, 0.29, Control.VAPOUR));

        assertThat(rules(of(closed, null, null, null))).containsExactly("vapour-closed-both-sides");
        assertThat(rules(of(openInside, null, null, null))).containsExactly("outside-not-open-enough");
    }

    /** Five to one: 5.07 m inside allows 1.014 m outside. */
    @ParameterizedTest
    @CsvSource({"0.66, true", "0.67, false"})
    void inside_is_five_times_tighter_than_outside(double plywoodWetM, boolean passes) {
        List<AssemblyLayer> layers = wall();
        layers.set(3, layer("plywood", 3.5, plywoodWetM + 0.235, Control.AIR));

        assertThat(rules(of(layers, null, null, null)).isEmpty()).isEqualTo(passes);
    }

    @Test
    void a_layer_whose_resistance_nobody_knows_leaves_drying_not_proven() {
        List<AssemblyLayer> layers = wall();
        layers.set(3, layer("plywood", null, null, Control.AIR));

        Result result = of(layers, null, null, null);

        assertThat(rules(result)).containsExactly("vapour-resistance-not-known");
        assertThat(result.notProvenCount()).isEqualTo(1);
        assertThat(result.sdOutsideM()).isNull();
    }

    /** 12 mm of plywood: μ 70 wet, so 0.84 m (material table of the library). */
    @Test
    void a_material_of_the_library_brings_its_own_resistance() {
        List<AssemblyLayer> layers = wall();
        layers.set(
                3,
                new AssemblyLayer(
                        "plywood",
                        "plywood",
                        0.012,
                        "plywood",
                        null,
                        null,
                        List.of(LayerControl.first(Control.AIR)),
                        null,
                        null));

        assertThat(of(layers, null, null, null).sdOutsideM()).isCloseTo(0.84 + 0.117, within(1e-9));
    }

    @Test
    void vertical_boards_need_counter_battens_under_horizontal_ones() {
        UnaryOperator<Draft> vertical = d -> {
            d.boards = BoardDirection.VERTICAL;
            d.battens = BattenDirection.HORIZONTAL;
            return d;
        };
        assertThat(rules(of(wall(), cladding(vertical), null, null))).containsExactly("no-counter-battens");
        assertThat(rules(of(wall(), cladding(d -> counter(vertical.apply(d), 0.012)), null, null)))
                .containsExactly("counter-battens-too-thin");
        assertThat(rules(of(wall(), cladding(d -> counter(vertical.apply(d), null)), null, null)))
                .containsExactly("counter-battens-not-said");
        assertThat(rules(of(wall(), cladding(d -> counter(vertical.apply(d), 0.016)), null, null)))
                .isEmpty();
    }

    private static Draft counter(Draft draft, Double depthM) {
        draft.counter = depthM;
        return draft;
    }

    private static Cladding joints(double widthM) {
        return cladding(d -> {
            d.joint = widthM;
            return d;
        });
    }

    @Test
    void open_joints_ask_for_a_membrane_made_for_permanent_light() {
        assertThat(rules(of(wall(), joints(0.008), CLOSED_ONLY, null)))
                .containsExactly("membrane-not-for-permanent-light");
        assertThat(of(wall(), joints(0.008), CLOSED_ONLY, null).openFraction()).isEqualTo(8.0 / 128);
        assertThat(rules(of(wall(), joints(0.008), null, null))).containsExactly("membrane-not-named");
        assertThat(rules(of(wall(), joints(0.008), FOR_LIGHT, null))).isEmpty();
    }

    @Test
    void the_membrane_s_own_limits_hold_for_joint_and_open_share() {
        // 22 of 142 mm is 15.5 %, 40 of 160 mm is 25 %
        assertThat(rules(of(wall(), joints(0.022), FOR_LIGHT, null)))
                .containsExactly("joint-wider-than-membrane-allows");
        assertThat(rules(of(wall(), joints(0.040), FOR_LIGHT, null)))
                .containsExactly("joint-wider-than-membrane-allows", "open-share-above-membrane-limit");
        assertThat(rules(of(wall(), joints(0.008), new OuterMembrane("m", 180, true, null, null), null)))
                .containsExactly("open-joint-limits-not-known");
    }

    @ParameterizedTest
    @CsvSource({"89, true", "90, false", "120, false"})
    void sun_days_are_used_up_at_the_limit(double days, boolean passes) {
        assertThat(rules(of(wall(), cladding(d -> d), CLOSED_ONLY, days)).isEmpty())
                .isEqualTo(passes);
        assertThat(rules(of(wall(), cladding(d -> d), FOR_LIGHT, days))).isEmpty();
    }

    @Test
    void an_edge_that_cannot_drain_fails() {
        List<AssemblyLayer> taped = wall();
        AssemblyLayer membrane = taped.get(4);
        taped.set(
                4,
                new AssemblyLayer(
                        "membrane",
                        "membrane",
                        0.0005,
                        null,
                        0.117,
                        null,
                        membrane.controls(),
                        null,
                        EdgeState.SEALED));
        assertThat(rules(of(taped, cladding(d -> d), null, null))).containsExactly("bottom-edge-sealed-membrane");

        Cladding shut = cladding(d -> {
            d.bottom = EdgeState.SEALED;
            d.top = EdgeState.SEALED;
            d.screen = false;
            return d;
        });
        assertThat(rules(of(wall(), shut, null, null)))
                .containsExactly("cavity-closed-at-bottom", "cavity-closed-at-top", "no-insect-screen");
    }

    @Test
    void layers_in_the_wrong_order_fail() {
        List<AssemblyLayer> coldVapour = wall();
        coldVapour.add(3, coldVapour.remove(1));
        assertThat(rules(of(coldVapour, null, null, null))).contains("vapour-layer-on-cold-side");

        List<AssemblyLayer> waterOutside = wall();
        waterOutside.add(waterOutside.remove(4));
        assertThat(rules(of(waterOutside, null, null, null))).containsExactly("water-layer-outside-of-cladding");

        List<AssemblyLayer> noCavity = wall();
        noCavity.remove(5);
        noCavity.set(5, layer("boards", 1.0, null, Control.RAIN));
        assertThat(rules(of(noCavity, null, null, null))).contains("no-drained-cavity");
    }

    @ParameterizedTest
    @CsvSource({"0.009, cavity-too-thin", "0.019, cavity-shallow-for-wood", "0.021, "})
    void a_cavity_behind_wood_is_deep_enough_to_drain_and_dry(double depthM, String rule) {
        List<AssemblyLayer> layers = wall();
        layers.set(5, cavity(depthM));

        List<String> found = rules(of(layers, cladding(d -> d), null, null));

        assertThat(found).isEqualTo(rule == null ? List.of() : List.of(rule));
    }
}
