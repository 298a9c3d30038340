package oakum.physics.controllayer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import oakum.physics.calculation.Refused;
import oakum.physics.controllayer.ControlLayers.Break;
import oakum.physics.controllayer.ControlLayers.Face;
import oakum.physics.controllayer.ControlLayers.FaceLayer;
import oakum.physics.controllayer.ControlLayers.Input;
import oakum.physics.controllayer.ControlLayers.Line;
import oakum.physics.controllayer.ControlLayers.Result;
import oakum.physics.envelope.AssemblyKind;
import oakum.physics.envelope.Outside;
import org.junit.jupiter.api.Test;

class ControlLayersTest {
    private static final Join JOINED = new Join(JoinState.DETAIL, "tape");

    private static Face face(String id) {
        return face(id, Control.WATER, Control.AIR, Control.VAPOUR, Control.THERMAL);
    }

    private static Face face(String id, Control... controls) {
        List<FaceLayer> layers = new ArrayList<>();
        for (Control control : controls) {
            layers.add(
                    new FaceLayer(control.name(), control.label(), "one sheet", List.of(LayerControl.first(control))));
        }
        return new Face(id, id, AssemblyKind.WALL, null, null, layers);
    }

    private static Junction junction(String id, String from, String to, Join air) {
        return new Junction(id, id, JunctionKind.OTHER, from, to, JOINED, air, JOINED, JOINED, null, "C8");
    }

    private static Result of(List<Face> faces, List<Junction> junctions) {
        return of(new Input(faces, junctions, List.of(), List.of(), null));
    }

    private static Result of(Input input) {
        return ControlLayers.CALCULATION.calculate(input).output();
    }

    private static Line line(Result result, Control control) {
        return result.lines().stream()
                .filter(l -> l.control() == control)
                .findFirst()
                .orElseThrow();
    }

    /** Faces around a volume, each joined to the next and the last to the first, with some further junctions. */
    private static List<Junction> ring(int faces, List<Integer> chords) {
        List<Junction> junctions = new ArrayList<>();
        for (int i = 0; i < faces; i++) {
            junctions.add(junction("j" + i, "f" + i, "f" + (i + 1) % faces, JOINED));
        }
        for (int i = 0; i < chords.size(); i++) {
            junctions.add(junction("c" + i, "f" + chords.get(i) % faces, "f" + (chords.get(i) / 7) % faces, JOINED));
        }
        return junctions;
    }

    private static List<Face> faces(int count) {
        List<Face> faces = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            faces.add(face("f" + i));
        }
        return faces;
    }

    @Property(tries = 200)
    void closing_every_junction_closes_every_line(
            @ForAll @IntRange(min = 2, max = 12) int count, @ForAll List<@IntRange(min = 0, max = 83) Integer> chords) {
        Result result = of(faces(count), ring(count, chords.stream().limit(20).toList()));

        assertThat(result.breaks()).isEmpty();
        assertThat(result.lines()).hasSize(4).allSatisfy(line -> {
            assertThat(line.closed()).isTrue();
            assertThat(line.pieceCount()).isEqualTo(1);
        });
    }

    @Property(tries = 200)
    void opening_any_one_junction_breaks_exactly_there(
            @ForAll @IntRange(min = 2, max = 12) int count,
            @ForAll List<@IntRange(min = 0, max = 83) Integer> chords,
            @ForAll @IntRange(min = 0, max = 1000) int pick,
            @ForAll boolean said) {
        List<Junction> junctions = ring(count, chords.stream().limit(20).toList());
        Junction open = junctions.get(pick % junctions.size());
        Join gap = new Join(said ? JoinState.OPEN : JoinState.NOT_SAID, null);
        junctions.replaceAll(j -> j.id().equals(open.id()) ? junction(j.id(), j.from(), j.to(), gap) : j);

        Result result = of(faces(count), junctions);

        assertThat(result.breaks()).extracting(Break::junction).containsExactly(open.id());
        assertThat(result.breaks()).extracting(Break::control).containsExactly(Control.AIR);
        assertThat(result.lines())
                .filteredOn(Line::closed)
                .extracting(Line::control)
                .doesNotContain(Control.AIR);
        assertThat(result.lines()).filteredOn(Line::closed).hasSize(3);
    }

    /** A ring of n edges with k of them open falls into max(1, k) pieces: elementary graph theory. */
    @Property(tries = 200)
    void a_ring_with_open_junctions_falls_into_as_many_pieces(
            @ForAll @IntRange(min = 3, max = 12) int count, @ForAll @IntRange(min = 0, max = 12) int open) {
        int gaps = Math.min(open, count);
        List<Junction> junctions = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Join air = i < gaps ? new Join(JoinState.OPEN, null) : JOINED;
            junctions.add(junction("j" + i, "f" + i, "f" + (i + 1) % count, air));
        }

        assertThat(line(of(faces(count), junctions), Control.AIR).pieceCount()).isEqualTo(Math.max(1, gaps));
    }

    @Test
    void a_face_without_a_layer_for_a_control_breaks_that_line_there() {
        Result result = of(
                List.of(face("wall"), face("roof", Control.AIR, Control.VAPOUR, Control.THERMAL)),
                List.of(junction("eave", "wall", "roof", JOINED)));

        assertThat(result.breaks()).singleElement().satisfies(b -> {
            assertThat(b.control()).isEqualTo(Control.WATER);
            assertThat(b.assembly()).isEqualTo("roof");
            assertThat(b.junction()).isNull();
        });
    }

    @Test
    void under_a_vented_attic_the_roof_above_holds_the_water() {
        Face ceiling = new Face(
                "roof",
                "Ceiling",
                AssemblyKind.ROOF,
                Outside.VENTED_ATTIC,
                null,
                face("roof", Control.AIR, Control.VAPOUR, Control.THERMAL).layers());

        Result result = of(List.of(face("wall"), ceiling), List.of(junction("eave", "wall", "roof", JOINED)));

        assertThat(line(result, Control.WATER).closed()).isTrue();
    }

    @Test
    void a_face_that_no_junction_ties_to_the_rest_breaks_every_line() {
        Result result = of(
                List.of(face("wall"), face("roof"), face("slab")), List.of(junction("eave", "wall", "roof", JOINED)));

        assertThat(result.breaks()).hasSize(4).extracting(Break::assembly).containsOnly("slab");
    }

    @Test
    void windows_that_nobody_joined_break_every_line() {
        List<Face> faces = List.of(face("wall"), face("roof"));
        List<Junction> eave = List.of(junction("eave", "wall", "roof", JOINED));
        List<Junction> both = List.of(eave.get(0), junction("frame", "wall", ControlLayers.WINDOWS, JOINED));

        assertThat(of(new Input(faces, eave, List.of(), List.of(), 24.0)).breakCount())
                .isEqualTo(4);
        assertThat(of(new Input(faces, both, List.of(), List.of(), 24.0)).breakCount())
                .isZero();
        assertThat(of(new Input(faces, eave, List.of(), List.of(), 0.0)).breakCount())
                .isZero();
    }

    @Test
    void a_face_outside_of_the_volume_is_not_asked_for_its_layers() {
        Face garage = new Face("garage", "Garage wall", AssemblyKind.WALL, null, false, List.of());

        Result result = of(
                List.of(face("wall"), face("roof"), garage),
                List.of(
                        junction("eave", "wall", "roof", JOINED),
                        junction("side", "wall", "garage", new Join(JoinState.OPEN, null))));

        assertThat(result.breaks()).isEmpty();
    }

    @Test
    void a_detail_without_a_name_is_no_join() {
        Result result = of(
                List.of(face("wall"), face("roof")),
                List.of(junction("eave", "wall", "roof", new Join(JoinState.DETAIL, " "))));

        assertThat(result.breaks())
                .extracting(Break::reason)
                .containsExactly("eave, air: a detail is meant, but not named.");
    }

    @Test
    void a_hole_opens_the_red_line_until_it_is_named_and_sealed() {
        List<Face> faces = List.of(face("wall"), face("roof"));
        List<Junction> eave = List.of(junction("eave", "wall", "roof", JOINED));
        List<ExpectedHole> two = List.of(new ExpectedHole("erv", "ERV sleeves", 2));
        Hole sealed = new Hole("in", "ERV intake", "wall", "erv", 0.16, "gasket", null);
        Hole open = new Hole("out", "ERV exhaust", "wall", "erv", 0.16, null, "C8");

        Result one = of(new Input(faces, eave, two, List.of(sealed), null));
        Result both = of(new Input(faces, eave, two, List.of(sealed, open), null));

        assertThat(one.missingHoleCount()).isEqualTo(1);
        assertThat(line(one, Control.AIR).closed()).isFalse();
        assertThat(both.missingHoleCount()).isZero();
        assertThat(both.breaks()).extracting(Break::hole).containsExactly("out");
    }

    @Test
    void a_slab_edge_needs_its_thermal_break_said() {
        List<Face> faces = List.of(face("wall"), face("slab"));

        assertThat(of(faces, List.of(slabEdge(true))).findings()).isEmpty();
        assertThat(of(faces, List.of(slabEdge(null))).findings())
                .extracting(Finding::weight)
                .containsExactly(FindingWeight.NOT_PROVEN);
        assertThat(of(faces, List.of(slabEdge(false))).findings())
                .singleElement()
                .satisfies(f -> {
                    assertThat(f.weight()).isEqualTo(FindingWeight.FAILS);
                    assertThat(f.about()).isEqualTo("base");
                    assertThat(f.source()).contains("common practice");
                });
    }

    private static Junction slabEdge(Boolean broken) {
        return new Junction(
                "base", "base", JunctionKind.SLAB_EDGE, "wall", "slab", JOINED, JOINED, JOINED, JOINED, broken, null);
    }

    @Test
    void a_layer_that_is_said_to_run_through_must_be_the_same_on_both_sides() {
        Face other = new Face(
                "roof",
                "roof",
                AssemblyKind.ROOF,
                null,
                null,
                face("roof").layers().stream()
                        .map(l -> new FaceLayer(l.id(), l.label(), "another sheet", l.controls()))
                        .toList());
        Junction through = junction("eave", "wall", "roof", new Join(JoinState.CONTINUOUS, null));

        assertThat(of(List.of(face("wall"), other), List.of(through)).findings())
                .extracting(Finding::id)
                .containsExactly("another-layer-air-eave");
        assertThat(of(List.of(face("wall"), face("roof")), List.of(through)).findings())
                .isEmpty();
    }

    @Test
    void two_layers_counted_on_for_air_are_one_too_many_unless_one_is_only_the_second_line() {
        FaceLayer inner = new FaceLayer("inner", "inner", "sheet", List.of(LayerControl.first(Control.AIR)));
        FaceLayer second = new FaceLayer("inner", "inner", "sheet", List.of(new LayerControl(Control.AIR, true)));

        assertThat(of(List.of(with(inner), face("roof")), List.of(junction("eave", "wall", "roof", JOINED)))
                        .findings())
                .extracting(Finding::id)
                .containsExactly("two-layers-named-air-wall");
        assertThat(of(List.of(with(second), face("roof")), List.of(junction("eave", "wall", "roof", JOINED)))
                        .findings())
                .isEmpty();
    }

    private static Face with(FaceLayer layer) {
        List<FaceLayer> layers = new ArrayList<>(List.of(layer));
        layers.addAll(face("wall").layers());
        return new Face("wall", "wall", AssemblyKind.WALL, null, null, layers);
    }

    @Test
    void a_junction_that_names_no_assembly_of_the_house_is_refused() {
        assertThatThrownBy(() -> of(List.of(face("wall")), List.of(junction("eave", "wall", "rof", JOINED))))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.violations())
                                .singleElement()
                                .satisfies(v -> assertThat(v.field()).isEqualTo("junctions[eave].to")));
        assertThatThrownBy(() -> of(List.of(face("wall"), face("wall")), List.of()))
                .isInstanceOf(Refused.class);
    }
}
