package oakum.portal.view;

import java.util.ArrayList;
import java.util.List;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Source;
import oakum.physics.calculation.Unit;
import oakum.physics.envelope.Outside;
import oakum.physics.material.Material;
import oakum.physics.material.MaterialLibrary;
import oakum.physics.material.MaterialProperty;
import oakum.portal.calculation.AnswerJson;
import oakum.portal.calculation.Calculations;
import oakum.portal.calculation.FieldJson;
import oakum.portal.houserecord.EnclosurePart.Assembly;
import oakum.portal.houserecord.EnclosurePart.Layer;
import oakum.portal.houserecord.HouseCalculations;
import oakum.portal.houserecord.Snapshot;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Permission;
import oakum.portal.view.AssemblySheet.SheetLayer;
import oakum.portal.view.AssemblySheet.SheetResult;
import oakum.portal.view.AssemblySheet.SheetValue;
import oakum.portal.view.Joins.JoinsControl;
import org.jspecify.annotations.Nullable;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/** One assembly for its page: layers, their values with sources, what is computed of it, and what is wrong with it. */
@RestController
@RequestMapping("/api/v1/houses/{house}")
class AssemblyController {
    private static final String FINDINGS = "assembly-findings";
    private static final double DRY_CUP_HUMIDITY = 0.25;
    private static final double WET_CUP_HUMIDITY = 0.75;

    private final EnclosureSheets sheets;
    private final HouseCalculations houseCalculations;
    private final Calculations calculations;
    private final Access access;

    AssemblyController(
            EnclosureSheets sheets, HouseCalculations houseCalculations, Calculations calculations, Access access) {
        this.sheets = sheets;
        this.houseCalculations = houseCalculations;
        this.calculations = calculations;
        this.access = access;
    }

    @GetMapping("/assemblies/{id}")
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    AssemblySheet getAssembly(@PathVariable String house, @PathVariable String id) {
        Snapshot snapshot = sheets.snapshot(house);
        Assembly assembly = snapshot.parts().enclosure().assemblies().stream()
                .filter(one -> one.id().equals(id))
                .findFirst()
                .orElseThrow(() -> Problem.notFound("assembly", id));
        Outside outside = assembly.outside();
        return new AssemblySheet(
                house,
                assembly.id(),
                assembly.label(),
                assembly.kind().name(),
                assembly.kind().label(),
                outside == null ? null : outside.name(),
                outside == null ? null : outside.label(),
                !Boolean.FALSE.equals(assembly.bounds()),
                assembly.areaM2(),
                assembly.azimuthDeg(),
                assembly.tiltDeg(),
                assembly.heightM(),
                assembly.layers().stream().map(AssemblyController::layer).toList(),
                assembly.cladding(),
                assembly.fasteners(),
                houseCalculations.about(assembly).stream()
                        .filter(calculation -> !calculation.equals(FINDINGS))
                        .map(calculation -> result(snapshot, calculation, id))
                        .toList(),
                sheets.findings(snapshot, assembly),
                assembly.cladding() == null ? null : sheets.sunDays(house),
                sheets.proofs(snapshot, id),
                snapshot.parts().enclosure().junctions().stream()
                        .filter(junction -> junction.from().equals(id) || id.equals(junction.to()))
                        .map(junction -> junction.id())
                        .toList(),
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

    private SheetResult result(Snapshot snapshot, String calculation, String assembly) {
        String title = calculations.find(calculation).title();
        try {
            return new SheetResult(
                    calculation,
                    title,
                    AnswerJson.of(houseCalculations.answer(houseCalculations.fill(snapshot, calculation, assembly))),
                    null);
        } catch (Refused refused) {
            return new SheetResult(calculation, title, null, EnclosureSheets.sentence(refused));
        }
    }

    private static SheetLayer layer(Layer layer) {
        Material material = layer.materialId() == null
                ? null
                : MaterialLibrary.find(layer.materialId()).orElse(null);
        return new SheetLayer(
                layer.id(),
                layer.label(),
                layer.material(),
                layer.materialId(),
                material == null ? null : material.label(),
                layer.thicknessM(),
                layer.drawAs().name(),
                layer.controls().stream()
                        .map(c -> new JoinsControl(
                                c.control().name(), c.control().label(), Boolean.TRUE.equals(c.second())))
                        .toList(),
                layer.ventilation() == null ? null : layer.ventilation().name(),
                layer.openingM2PerM(),
                layer.framingMaterialId(),
                layer.framingFraction(),
                layer.bottomEdge() == null ? null : layer.bottomEdge().name(),
                values(layer, material));
    }

    /** A typed value wins over the library's. */
    private static List<SheetValue> values(Layer layer, @Nullable Material material) {
        List<SheetValue> values = new ArrayList<>();
        Double conductivity = layer.conductivityWPerMK();
        if (layer.thermalResistanceM2KPerW() != null) {
            values.add(typed(
                    "thermalResistanceM2KPerW",
                    "Thermal resistance",
                    layer.thermalResistanceM2KPerW(),
                    Unit.SQUARE_METRE_KELVIN_PER_WATT));
        }
        if (conductivity != null) {
            values.add(typed("conductivityWPerMK", "Conductivity", conductivity, Unit.WATT_PER_METRE_KELVIN));
        } else if (material != null && material.knows(MaterialProperty.CONDUCTIVITY)) {
            values.add(known(
                    material,
                    MaterialProperty.CONDUCTIVITY,
                    "conductivityWPerMK",
                    "Conductivity",
                    material.conductivityWPerMK(),
                    Unit.WATT_PER_METRE_KELVIN));
        }
        if (layer.sdDryM() != null) {
            values.add(typed("sdDryM", "Equivalent air layer, dry", layer.sdDryM(), Unit.METRE));
            values.add(typed(
                    "sdWetM",
                    "Equivalent air layer, wet",
                    layer.sdWetM() == null ? layer.sdDryM() : layer.sdWetM(),
                    Unit.METRE));
        } else if (material != null && material.knows(MaterialProperty.VAPOUR_RESISTANCE)) {
            values.add(known(
                    material,
                    MaterialProperty.VAPOUR_RESISTANCE,
                    "sdDryM",
                    "Equivalent air layer, dry",
                    material.diffusionThicknessM(layer.thicknessM(), DRY_CUP_HUMIDITY),
                    Unit.METRE));
            values.add(known(
                    material,
                    MaterialProperty.VAPOUR_RESISTANCE,
                    "sdWetM",
                    "Equivalent air layer, wet",
                    material.diffusionThicknessM(layer.thicknessM(), WET_CUP_HUMIDITY),
                    Unit.METRE));
        }
        if (material != null && material.knows(MaterialProperty.DENSITY)) {
            values.add(known(
                    material,
                    MaterialProperty.DENSITY,
                    "densityKgPerM3",
                    "Density",
                    material.densityKgPerM3(),
                    Unit.KILOGRAM_PER_CUBIC_METRE));
        }
        if (material != null && material.knows(MaterialProperty.HEAT_CAPACITY)) {
            values.add(known(
                    material,
                    MaterialProperty.HEAT_CAPACITY,
                    "heatCapacityJPerKgK",
                    "Heat capacity",
                    material.heatCapacityJPerKgK(),
                    Unit.JOULE_PER_KILOGRAM_KELVIN));
        }
        return values;
    }

    private static SheetValue typed(String name, String label, double value, Unit unit) {
        return new SheetValue(name, label, value, FieldJson.UnitJson.of(unit), "house record", "typed in the record");
    }

    private static SheetValue known(
            Material material, MaterialProperty property, String name, String label, double value, Unit unit) {
        Source source = material.source(property);
        return new SheetValue(
                name,
                label,
                value,
                FieldJson.UnitJson.of(unit),
                source.citation(),
                source.status().label());
    }
}
