package oakum.physics.controllayer;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Caution;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Violation;
import oakum.physics.envelope.AssemblyKind;
import oakum.physics.envelope.Outside;
import org.jspecify.annotations.Nullable;

/**
 * Whether the layers that hold back water, air, vapour and heat close around the conditioned volume: a graph whose nodes
 * are the faces of the envelope and whose edges are the junctions.
 */
public final class ControlLayers {
    /** What a junction meets that is no assembly. */
    public static final String WINDOWS = "windows";

    /** The four that must close. */
    static final List<Control> LINES = List.of(Control.WATER, Control.AIR, Control.VAPOUR, Control.THERMAL);

    public static final Calculation<Input, Result> CALCULATION = Calculation.declare(
                    "control-layers", "1.0", "Control layers and joins", Input.class, Result.class)
            .purpose("Finds where the layers for water, air, vapour and heat are not closed around the conditioned"
                    + " volume, and which holes through the red line nobody has named or sealed.")
            .equation(
                    "a line is closed where every face names its layer, every junction joins it, and no face stands"
                            + " alone",
                    Rules.SAME_LAYER)
            .equation("holes not named = holes expected − holes named", Rules.HOLES)
            .source(Rules.SAME_LAYER)
            .source(Rules.HOLES)
            .source(Rules.THERMAL_BREAK)
            .caution(new Caution(
                    "Mould",
                    "A line closed on paper says nothing about the work. Leaks wet what lies behind them: look at each"
                            + " join before it is covered, and measure the house."))
            .validation("No published example was found; held against the properties of a graph, each junction opened"
                    + " in turn, and the rules of the trade.")
            .by(ControlLayers::compute);

    private ControlLayers() {}

    /**
     * A house as faces, junctions and holes.
     *
     * @param windowAreaM2 of all windows, or null where there are none
     */
    public record Input(
            @Entry(label = "Assemblies", minRows = 1, maxRows = 30)
            List<Face> assemblies,

            @Entry(label = "Junctions", maxRows = 100) List<Junction> junctions,

            @Entry(label = "Expected holes", maxRows = 60) List<ExpectedHole> expectedHoles,

            @Entry(label = "Holes through the red line", maxRows = 300)
            List<Hole> holes,

            @Quantity(
                    label = "Window area",
                    symbol = "A",
                    unit = Unit.SQUARE_METRE,
                    min = 0,
                    max = 1000,
                    limitSource = Rules.PLAUSIBLE)
            @Nullable
            Double windowAreaM2) {}

    /**
     * One face of the envelope.
     *
     * @param outside null for outdoor air
     * @param bounds whether it bounds the conditioned volume; null for yes
     */
    public record Face(
            @Entry(label = "Short name", maxLength = 40) String id,

            @Entry(label = "Name") String label,
            @Entry(label = "Kind") AssemblyKind kind,

            @Entry(label = "Outside of it") @Nullable Outside outside,

            @Entry(label = "Bounds the conditioned volume") @Nullable
            Boolean bounds,

            @Entry(label = "Layers, from inside", maxRows = 30)
            List<FaceLayer> layers) {
        boolean isBound() {
            return !Boolean.FALSE.equals(bounds);
        }
    }

    /** One layer of a face. */
    public record FaceLayer(
            @Entry(label = "Short name", maxLength = 40) String id,

            @Entry(label = "Name") String label,
            @Entry(label = "Material") String material,

            @Entry(label = "Controls", maxRows = 6) List<LayerControl> controls) {
        boolean carries(Control control) {
            return controls.stream().anyMatch(c -> c.carries(control));
        }
    }

    /** What stands and what does not. */
    public record Result(
            @Entry(label = "Lines") List<Line> lines,
            @Entry(label = "Layers counted on") List<Carrier> carriers,
            @Entry(label = "Breaks") List<Break> breaks,
            @Entry(label = "Holes not named") List<MissingHole> missingHoles,
            @Entry(label = "Findings") List<Finding> findings,

            @Quantity(label = "Breaks", unit = Unit.COUNT, step = 1, leading = true)
            int breakCount,

            @Quantity(label = "Holes not named", unit = Unit.COUNT, step = 1, leading = true)
            int missingHoleCount,

            @Quantity(label = "Findings", unit = Unit.COUNT, step = 1, leading = true)
            int findingCount) {}

    /**
     * One control around the whole volume.
     *
     * @param id the control in small letters
     * @param pieceCount into how many pieces open junctions cut the faces; 1 where they hang together
     */
    public record Line(
            @Entry(label = "Line", maxLength = 20) String id,
            @Entry(label = "Control") Control control,
            @Entry(label = "Closed") boolean closed,

            @Quantity(label = "Breaks", unit = Unit.COUNT, step = 1)
            int breakCount,

            @Quantity(label = "Pieces", unit = Unit.COUNT, step = 1)
            int pieceCount) {}

    /** Which layer of a face is counted on for a control. */
    public record Carrier(
            @Entry(label = "Place", maxLength = 80) String id,
            @Entry(label = "Control") Control control,
            @Entry(label = "Assembly", maxLength = 40) String assembly,
            @Entry(label = "Layer", maxLength = 40) String layer,
            @Entry(label = "Name") String label) {}

    /**
     * Where a line is not closed; it names one of assembly, junction and hole, the others are null.
     *
     * @param reason the whole sentence
     */
    public record Break(
            @Entry(label = "Place", maxLength = 80) String id,
            @Entry(label = "Control") Control control,

            @Entry(label = "Assembly", maxLength = 40) @Nullable
            String assembly,

            @Entry(label = "Junction", maxLength = 40) @Nullable
            String junction,

            @Entry(label = "Hole", maxLength = 40) @Nullable String hole,

            @Entry(label = "Cover check", maxLength = 8) @Nullable
            String coverCheck,

            @Entry(label = "Because", maxLength = 500) String reason) {}

    /** Holes of one kind that the house must have and the list does not name. */
    public record MissingHole(
            @Entry(label = "Short name", maxLength = 40) String id,
            @Entry(label = "Name") String label,

            @Quantity(label = "Expected", unit = Unit.COUNT, step = 1)
            int expectedCount,

            @Quantity(label = "Named", unit = Unit.COUNT, step = 1)
            int namedCount) {}

    private static Result compute(Input input) {
        requireNames(input);
        List<Face> faces = input.assemblies().stream().filter(Face::isBound).toList();
        List<Carrier> carriers = new ArrayList<>();
        List<Break> breaks = new ArrayList<>();
        List<Line> lines = new ArrayList<>();
        List<MissingHole> missing = missingHoles(input);
        for (Control control : LINES) {
            int before = breaks.size();
            faces.forEach(face -> carrier(face, control)
                    .ifPresentOrElse(carriers::add, () -> breaks.add(missingLayer(face, control))));
            between(input, faces).forEach(junction -> breakOf(junction, control).ifPresent(breaks::add));
            standingAlone(input, faces, control).forEach(breaks::add);
            if (control == Control.AIR) {
                openHoles(input, faces, missing).forEach(breaks::add);
            }
            int count = breaks.size() - before;
            int pieces = pieces(
                            input, faces, junction -> breakOf(junction, control).isEmpty())
                    .size();
            lines.add(new Line(key(control), control, count == 0, count, pieces));
        }
        List<Finding> findings = findings(input, faces, carriers);
        return new Result(
                lines,
                carriers,
                breaks,
                missing,
                findings,
                breaks.size(),
                missing.stream()
                        .mapToInt(m -> m.expectedCount() - m.namedCount())
                        .sum(),
                findings.size());
    }

    private static String key(Control control) {
        return control.name().toLowerCase(Locale.ROOT);
    }

    private static void requireNames(Input input) {
        List<Violation> found = new ArrayList<>();
        Set<String> faces =
                names("assemblies", input.assemblies().stream().map(Face::id).toList(), found);
        names("junctions", input.junctions().stream().map(Junction::id).toList(), found);
        names("holes", input.holes().stream().map(Hole::id).toList(), found);
        Set<String> expected = names(
                "expectedHoles",
                input.expectedHoles().stream().map(ExpectedHole::id).toList(),
                found);
        for (Junction junction : input.junctions()) {
            String at = "junctions[" + junction.id() + "]";
            known(at + ".from", junction.from(), faces, "an assembly", found);
            String to = junction.to();
            if (to != null && !to.equals(WINDOWS)) {
                known(at + ".to", to, faces, "an assembly, or " + WINDOWS, found);
            }
        }
        for (Hole hole : input.holes()) {
            String at = "holes[" + hole.id() + "]";
            known(at + ".assembly", hole.assembly(), faces, "an assembly", found);
            String of = hole.expected();
            if (of != null) {
                known(at + ".expected", of, expected, "an expected hole", found);
            }
        }
        if (faces.contains(WINDOWS)) {
            found.add(Violation.of(
                    "assemblies[" + WINDOWS + "].id", WINDOWS, "No assembly may be called " + WINDOWS + ".", ""));
        }
        if (!found.isEmpty()) {
            throw new Refused(found);
        }
    }

    private static Set<String> names(String list, List<String> ids, List<Violation> found) {
        Set<String> names = new LinkedHashSet<>();
        for (String id : ids) {
            if (!names.add(id)) {
                found.add(
                        Violation.of(list + "[" + id + "].id", id, "\"" + id + "\" stands twice in " + list + ".", ""));
            }
        }
        return names;
    }

    private static void known(String field, String value, Set<String> names, String what, List<Violation> found) {
        if (!names.contains(value)) {
            found.add(Violation.of(
                    field, value, field + " = \"" + value + "\" is not the short name of " + what + ".", ""));
        }
    }

    /** The layer that is counted on; under a vented attic the water stays on the roof above it. */
    private static Optional<Carrier> carrier(Face face, Control control) {
        Optional<FaceLayer> layer =
                face.layers().stream().filter(l -> l.carries(control)).findFirst();
        String id = key(control) + "-" + face.id();
        if (layer.isEmpty() && control == Control.WATER && face.outside() == Outside.VENTED_ATTIC) {
            return Optional.of(new Carrier(id, control, face.id(), "", "the roof over the attic"));
        }
        return layer.map(l -> new Carrier(id, control, face.id(), l.id(), l.label()));
    }

    private static Break missingLayer(Face face, Control control) {
        return new Break(
                key(control) + "-layer-" + face.id(),
                control,
                face.id(),
                null,
                null,
                null,
                face.label() + ": no layer is named for " + control.label() + ".");
    }

    /** The junctions that belong to the line: those between faces that bound the volume. */
    private static List<Junction> between(Input input, List<Face> faces) {
        Set<String> bound = new HashSet<>();
        faces.forEach(face -> bound.add(face.id()));
        bound.add(WINDOWS);
        return input.junctions().stream()
                .filter(j -> bound.contains(j.from()) && (j.to() == null || bound.contains(j.to())))
                .toList();
    }

    private static Optional<Break> breakOf(Junction junction, Control control) {
        Join join = junction.join(control);
        String why = switch (join.state()) {
            case CONTINUOUS -> null;
            case DETAIL -> isBlank(join.detail()) ? "a detail is meant, but not named" : null;
            case OPEN -> "not joined";
            case NOT_SAID -> "nobody has said how it passes on";
        };
        return Optional.ofNullable(why)
                .map(reason -> new Break(
                        key(control) + "-join-" + junction.id(),
                        control,
                        null,
                        junction.id(),
                        null,
                        junction.coverCheck(),
                        junction.label() + ", " + control.label() + ": " + reason + "."));
    }

    /** Faces, and windows, that no junction ties to the rest: nobody has said how they are joined. */
    private static List<Break> standingAlone(Input input, List<Face> faces, Control control) {
        List<Set<String>> pieces = pieces(input, faces, junction -> true);
        List<Break> alone = new ArrayList<>();
        pieces.stream().skip(1).forEach(piece -> {
            String first = piece.iterator().next();
            String name = faces.stream()
                    .filter(face -> face.id().equals(first))
                    .map(Face::label)
                    .findFirst()
                    .orElse("Windows");
            alone.add(new Break(
                    key(control) + "-alone-" + first,
                    control,
                    first,
                    null,
                    null,
                    null,
                    name + ": no junction says how " + control.label() + " passes on to the rest of the envelope."));
        });
        return alone;
    }

    /** The faces, and the windows where there are any, in pieces that hang together by the junctions that hold. */
    private static List<Set<String>> pieces(Input input, List<Face> faces, Predicate<Junction> holds) {
        Map<String, Set<String>> pieceOf = new LinkedHashMap<>();
        faces.forEach(face -> pieceOf.put(face.id(), new LinkedHashSet<>(Set.of(face.id()))));
        Double windows = input.windowAreaM2();
        if (windows != null && windows > 0) {
            pieceOf.put(WINDOWS, new LinkedHashSet<>(Set.of(WINDOWS)));
        }
        for (Junction junction : between(input, faces)) {
            Set<String> one = pieceOf.get(junction.from());
            Set<String> other = junction.to() == null ? null : pieceOf.get(junction.to());
            if (one != null && other != null && one != other && holds.test(junction)) {
                one.addAll(other);
                other.forEach(name -> pieceOf.put(name, one));
            }
        }
        Set<Set<String>> seen = Collections.newSetFromMap(new IdentityHashMap<>());
        return pieceOf.values().stream().filter(seen::add).toList();
    }

    private static List<MissingHole> missingHoles(Input input) {
        List<MissingHole> missing = new ArrayList<>();
        for (ExpectedHole expected : input.expectedHoles()) {
            int named = named(input, expected);
            if (named < expected.holeCount()) {
                missing.add(new MissingHole(expected.id(), expected.label(), expected.holeCount(), named));
            }
        }
        return missing;
    }

    private static int named(Input input, ExpectedHole expected) {
        return (int) input.holes().stream()
                .filter(hole -> expected.id().equals(hole.expected()))
                .count();
    }

    private static List<Break> openHoles(Input input, List<Face> faces, List<MissingHole> missing) {
        List<Break> open = new ArrayList<>();
        for (Hole hole : input.holes()) {
            boolean throughLine = faces.stream().anyMatch(face -> face.id().equals(hole.assembly()));
            if (throughLine && isBlank(hole.sealedBy())) {
                open.add(new Break(
                        "air-hole-" + hole.id(),
                        Control.AIR,
                        hole.assembly(),
                        null,
                        hole.id(),
                        hole.coverCheck(),
                        hole.label() + ": nobody has said how this hole is sealed at the air plane."));
            }
        }
        missing.forEach(m -> open.add(new Break(
                "air-unnamed-" + m.id(),
                Control.AIR,
                null,
                null,
                null,
                null,
                m.label() + ": " + m.namedCount() + " of " + m.expectedCount()
                        + " holes are named; the house cannot do without them, so they will be made.")));
        return open;
    }

    private static List<Finding> findings(Input input, List<Face> faces, List<Carrier> carriers) {
        List<Finding> findings = new ArrayList<>();
        faces.forEach(
                face -> LINES.forEach(control -> twoCarriers(face, control).ifPresent(findings::add)));
        for (Junction junction : between(input, faces)) {
            thermalBreak(junction).ifPresent(findings::add);
            LINES.forEach(
                    control -> otherLayer(input, junction, control, carriers).ifPresent(findings::add));
        }
        for (ExpectedHole expected : input.expectedHoles()) {
            int named = named(input, expected);
            if (named > expected.holeCount()) {
                findings.add(Finding.of(
                        "more-holes-than-expected-" + expected.id(),
                        FindingWeight.LOOK,
                        expected.id(),
                        expected.label() + ": " + named + " holes are named, " + expected.holeCount() + " expected.",
                        "A hole more is a leak more: either the equipment grew, or a hole stands twice in the list.",
                        Rules.HOLES));
            }
        }
        return List.copyOf(findings);
    }

    /** Two layers for heat are usual; two for the others mean that nobody knows which one to join. */
    private static Optional<Finding> twoCarriers(Face face, Control control) {
        List<FaceLayer> named =
                face.layers().stream().filter(l -> l.carries(control)).toList();
        if (control == Control.THERMAL || named.size() < 2) {
            return Optional.empty();
        }
        return Optional.of(Finding.of(
                "two-layers-named-" + key(control) + "-" + face.id(),
                FindingWeight.NOT_PROVEN,
                face.id(),
                face.label() + " counts on two layers for " + control.label() + ": "
                        + named.get(0).label() + " and " + named.get(1).label() + ".",
                "At each junction one of them gets joined and the other is taken for it: say which one is only the"
                        + " second line.",
                Rules.SAME_LAYER));
    }

    private static Optional<Finding> thermalBreak(Junction junction) {
        boolean asked = junction.kind() == JunctionKind.SLAB_EDGE || junction.kind() == JunctionKind.LEDGER;
        if (!asked || Boolean.TRUE.equals(junction.thermalBreak())) {
            return Optional.empty();
        }
        boolean said = junction.thermalBreak() != null;
        return Optional.of(Finding.of(
                (said ? "thermal-break-missing-" : "thermal-break-not-said-") + junction.id(),
                said ? FindingWeight.FAILS : FindingWeight.NOT_PROVEN,
                junction.id(),
                junction.label()
                        + (said
                                ? ": concrete, steel or framing runs through the insulation."
                                : ": nobody has said whether the insulation is broken through here."),
                "A cold edge wets the base of the wall from inside, and costs heat all winter.",
                Rules.THERMAL_BREAK));
    }

    private static Optional<Finding> otherLayer(
            Input input, Junction junction, Control control, List<Carrier> carriers) {
        String to = junction.to();
        if (to == null || junction.join(control).state() != JoinState.CONTINUOUS) {
            return Optional.empty();
        }
        String here = material(input, carriers, junction.from(), control);
        String there = material(input, carriers, to, control);
        if (here == null || there == null || Objects.equals(here, there)) {
            return Optional.empty();
        }
        return Optional.of(Finding.of(
                "another-layer-" + key(control) + "-" + junction.id(),
                FindingWeight.NOT_PROVEN,
                junction.id(),
                junction.label() + ", " + control.label() + ": said to run through, but one side counts on \"" + here
                        + "\" and the other on \"" + there + "\".",
                "Two layers meet only by a detail: name it, or name the same layer on both sides.",
                Rules.SAME_LAYER));
    }

    private static @Nullable String material(Input input, List<Carrier> carriers, String face, Control control) {
        return carriers.stream()
                .filter(c -> c.control() == control && c.assembly().equals(face))
                .findFirst()
                .flatMap(c -> input.assemblies().stream()
                        .filter(f -> f.id().equals(face))
                        .flatMap(f -> f.layers().stream())
                        .filter(l -> l.id().equals(c.layer()))
                        .map(FaceLayer::material)
                        .findFirst())
                .orElse(null);
    }

    private static boolean isBlank(@Nullable String text) {
        return text == null || text.isBlank();
    }
}
