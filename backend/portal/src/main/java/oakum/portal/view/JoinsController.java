package oakum.portal.view;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import oakum.physics.calculation.Refused;
import oakum.physics.controllayer.Control;
import oakum.physics.controllayer.ControlLayers;
import oakum.physics.controllayer.ExpectedHole;
import oakum.physics.controllayer.Hole;
import oakum.physics.controllayer.Join;
import oakum.physics.controllayer.Junction;
import oakum.physics.envelope.Outside;
import oakum.portal.houserecord.EnclosurePart;
import oakum.portal.houserecord.EnclosurePart.Assembly;
import oakum.portal.houserecord.EnclosurePart.Layer;
import oakum.portal.houserecord.HouseCalculations;
import oakum.portal.houserecord.Snapshot;
import oakum.portal.people.Access;
import oakum.portal.people.Permission;
import oakum.portal.site.CoverCheckListed;
import oakum.portal.site.CoverChecks;
import oakum.portal.site.CoverChecksOfHouse;
import oakum.portal.view.Joins.JoinsAssembly;
import oakum.portal.view.Joins.JoinsBreak;
import oakum.portal.view.Joins.JoinsCarrier;
import oakum.portal.view.Joins.JoinsCheck;
import oakum.portal.view.Joins.JoinsControl;
import oakum.portal.view.Joins.JoinsFinding;
import oakum.portal.view.Joins.JoinsHole;
import oakum.portal.view.Joins.JoinsJoin;
import oakum.portal.view.Joins.JoinsJunction;
import oakum.portal.view.Joins.JoinsLayer;
import oakum.portal.view.Joins.JoinsLine;
import oakum.portal.view.Joins.JoinsMissingHole;
import org.jspecify.annotations.Nullable;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/** The joins page: four lines around the house, where they are open, and every hole. */
@RestController
@RequestMapping("/api/v1/houses/{house}")
class JoinsController {
    private static final String CONTROL_LAYERS = "control-layers";
    private static final List<Control> LINES = List.of(Control.WATER, Control.AIR, Control.VAPOUR, Control.THERMAL);

    private final EnclosureSheets sheets;
    private final HouseCalculations calculations;
    private final CoverChecks checks;
    private final Access access;

    JoinsController(EnclosureSheets sheets, HouseCalculations calculations, CoverChecks checks, Access access) {
        this.sheets = sheets;
        this.calculations = calculations;
        this.checks = checks;
        this.access = access;
    }

    @GetMapping("/joins")
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    Joins getJoins(@PathVariable String house) {
        Snapshot snapshot = sheets.snapshot(house);
        ControlLayers.Result result = null;
        String refusal = null;
        try {
            result = (ControlLayers.Result) calculations
                    .answer(calculations.fill(snapshot, CONTROL_LAYERS, null))
                    .output();
        } catch (Refused refused) {
            refusal = EnclosureSheets.sentence(refused);
        }
        return new Page(snapshot.parts().enclosure(), result, checks(house)).joins(snapshot, refusal);
    }

    private Map<String, JoinsCheck> checks(String house) {
        CoverChecksOfHouse all = checks.list(house);
        Map<String, JoinsCheck> byCode = new LinkedHashMap<>();
        for (CoverCheckListed check : all.checks()) {
            byCode.put(
                    check.code(),
                    new JoinsCheck(check.code(), check.title(), check.state().name(), check.stateLabel()));
        }
        all.notYetMade()
                .forEach(offered ->
                        byCode.put(offered.code(), new JoinsCheck(offered.code(), offered.title(), null, null)));
        return byCode;
    }

    /** One page while it is put together. */
    private final class Page {
        private final EnclosurePart enclosure;
        private final ControlLayers.@Nullable Result result;
        private final Map<String, JoinsCheck> checks;

        Page(EnclosurePart enclosure, ControlLayers.@Nullable Result result, Map<String, JoinsCheck> checks) {
            this.enclosure = enclosure;
            this.result = result;
            this.checks = checks;
        }

        Joins joins(Snapshot snapshot, @Nullable String refusal) {
            String house = snapshot.houseId();
            List<String> junctions =
                    enclosure.junctions().stream().map(Junction::id).toList();
            List<JoinsFinding> findings = findings();
            return new Joins(
                    house,
                    result == null
                            ? List.of()
                            : result.lines().stream().map(this::line).toList(),
                    breaks().stream().map(Page::shown).toList(),
                    enclosure.assemblies().stream()
                            .map(assembly -> assembly(assembly, sheets.findings(snapshot, assembly)))
                            .toList(),
                    enclosure.junctions().stream().map(this::junction).toList(),
                    enclosure.holes().stream().map(this::hole).toList(),
                    result == null
                            ? List.of()
                            : result.missingHoles().stream()
                                    .map(m ->
                                            new JoinsMissingHole(m.id(), m.label(), m.expectedCount(), m.namedCount()))
                                    .toList(),
                    findings.stream()
                            .filter(finding -> !junctions.contains(finding.about()))
                            .toList(),
                    sheets.proofs(snapshot, null),
                    refusal,
                    actions(house));
        }

        private List<String> actions(String house) {
            List<String> actions = new ArrayList<>();
            if (access.may(Permission.EDIT_RECORD, house)) {
                actions.add("save-part");
            }
            if (access.may(Permission.EDIT_PROOF, house)) {
                actions.add("keep-proof");
            }
            return actions;
        }

        private List<ControlLayers.Break> breaks() {
            return result == null ? List.of() : result.breaks();
        }

        private List<JoinsFinding> findings() {
            return result == null
                    ? List.of()
                    : result.findings().stream().map(EnclosureSheets::shown).toList();
        }

        private static JoinsBreak shown(ControlLayers.Break one) {
            return new JoinsBreak(
                    one.id(),
                    one.control().name(),
                    one.control().label(),
                    one.assembly(),
                    one.junction(),
                    one.hole(),
                    one.coverCheck(),
                    one.reason());
        }

        private JoinsLine line(ControlLayers.Line line) {
            String name = line.control().label();
            String sentence = line.closed()
                    ? "The line for " + name + " is closed around the house."
                    : "The line for " + name + " is open at " + Words.count(line.breakCount(), "place", "places") + ".";
            return new JoinsLine(
                    line.control().name(), name, line.closed(), line.breakCount(), line.pieceCount(), sentence);
        }

        private JoinsAssembly assembly(Assembly assembly, List<JoinsFinding> findings) {
            Outside outside = assembly.outside();
            return new JoinsAssembly(
                    assembly.id(),
                    assembly.label(),
                    assembly.kind().name(),
                    assembly.kind().label(),
                    outside == null ? null : outside.name(),
                    outside == null ? null : outside.label(),
                    !Boolean.FALSE.equals(assembly.bounds()),
                    assembly.areaM2(),
                    assembly.layers().stream().map(Page::layer).toList(),
                    result == null
                            ? List.of()
                            : result.carriers().stream()
                                    .filter(carrier -> carrier.assembly().equals(assembly.id()))
                                    .map(c -> new JoinsCarrier(
                                            c.control().name(), c.control().label(), c.layer(), c.label()))
                                    .toList(),
                    findings);
        }

        private static JoinsLayer layer(Layer layer) {
            return new JoinsLayer(
                    layer.id(),
                    layer.label(),
                    layer.material(),
                    layer.thicknessM(),
                    layer.drawAs().name(),
                    layer.controls().stream()
                            .map(c -> new JoinsControl(
                                    c.control().name(), c.control().label(), Boolean.TRUE.equals(c.second())))
                            .toList());
        }

        private JoinsJunction junction(Junction junction) {
            return new JoinsJunction(
                    junction.id(),
                    junction.label(),
                    junction.kind().name(),
                    junction.kind().label(),
                    junction.from(),
                    name(junction.from()),
                    junction.to(),
                    junction.to() == null ? null : name(junction.to()),
                    junction.thermalBreak(),
                    LINES.stream().map(control -> join(junction, control)).toList(),
                    check(junction.coverCheck()),
                    findings().stream()
                            .filter(finding -> finding.about().equals(junction.id()))
                            .toList());
        }

        private JoinsJoin join(Junction junction, Control control) {
            Join join = junction.join(control);
            Optional<String> reason = breaks().stream()
                    .filter(b -> b.control() == control && junction.id().equals(b.junction()))
                    .map(ControlLayers.Break::reason)
                    .findFirst();
            return new JoinsJoin(
                    control.name(),
                    control.label(),
                    join.state().name(),
                    join.state().label(),
                    join.detail(),
                    reason.isEmpty(),
                    reason.orElse(null));
        }

        private JoinsHole hole(Hole hole) {
            Optional<String> reason = breaks().stream()
                    .filter(b -> hole.id().equals(b.hole()))
                    .map(ControlLayers.Break::reason)
                    .findFirst();
            String expected = enclosure.expectedHoles().stream()
                    .filter(e -> e.id().equals(hole.expected()))
                    .map(ExpectedHole::label)
                    .findFirst()
                    .orElse(null);
            return new JoinsHole(
                    hole.id(),
                    hole.label(),
                    hole.assembly(),
                    name(hole.assembly()),
                    expected,
                    hole.diameterM(),
                    hole.sealedBy(),
                    reason.isEmpty(),
                    reason.orElse(null),
                    check(hole.coverCheck()));
        }

        private String name(String id) {
            return enclosure.assemblies().stream()
                    .filter(assembly -> assembly.id().equals(id))
                    .map(Assembly::label)
                    .findFirst()
                    .orElse(id);
        }

        private @Nullable JoinsCheck check(@Nullable String code) {
            return code == null
                    ? null
                    : Objects.requireNonNullElse(
                            checks.get(code.toUpperCase(Locale.ROOT)), new JoinsCheck(code, null, null, null));
        }
    }
}
