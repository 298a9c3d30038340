package oakum.portal.houserecord;

import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Limits;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Violation;
import oakum.portal.calculation.Calculations;
import oakum.portal.houserecord.standing.Binding;
import oakum.portal.houserecord.standing.Relied;
import org.jspecify.annotations.Nullable;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.JsonNode;

/** Calculations filled from the record of a house. */
@RestController
@RequestMapping("/api/v1/houses/{house}/calculations")
@Tag(name = "House record")
class HouseCalculationController {
    private final HouseCalculations filled;
    private final HouseRecord record;
    private final Calculations calculations;

    HouseCalculationController(HouseCalculations filled, HouseRecord record, Calculations calculations) {
        this.filled = filled;
        this.record = record;
        this.calculations = calculations;
    }

    /**
     * A calculation that the record of this house can fill.
     *
     * @param assembly the assembly it would be about, or null
     * @param assemblyLabel its name
     */
    record HouseCalculation(
            String calculation,
            String title,
            @Nullable String assembly,
            @Nullable String assemblyLabel) {}

    /**
     * A calculation with its inputs from the record.
     *
     * @param bindings to be sent as they are when a proof is kept
     * @param inputs as the calculation takes them; what the record does not say is left out
     * @param relied which inputs came from the record, and from where
     * @param missing what still has to be typed, in whole sentences; empty where it can be computed
     */
    record HouseInputs(
            String calculation,
            String title,
            @Nullable String assembly,
            List<Binding> bindings,
            @Schema(type = "object") JsonNode inputs,
            List<Relied> relied,
            List<String> missing) {}

    @GetMapping
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    List<HouseCalculation> listHouseCalculations(@PathVariable String house) {
        Parts parts = record.parts(house);
        List<EnclosurePart.Assembly> assemblies = parts.enclosure().assemblies();
        List<HouseCalculation> all = new ArrayList<>();
        for (Calculation<?, ?> calculation : calculations.all()) {
            boolean ofAir = calculation.id().equals(AirBindings.HOUSE_PRESSURE)
                    && !parts.air().exhaust().isEmpty();
            boolean ofEnclosure = EnclosureBindings.PER_HOUSE.contains(calculation.id()) && !assemblies.isEmpty();
            if (ofAir || ofEnclosure) {
                all.add(new HouseCalculation(calculation.id(), calculation.title(), null, null));
            }
            if (EnclosureBindings.PER_ASSEMBLY.contains(calculation.id())) {
                assemblies.stream()
                        .filter(a -> EnclosureBindings.applies(calculation.id(), a))
                        .forEach(a -> all.add(
                                new HouseCalculation(calculation.id(), calculation.title(), a.id(), a.label())));
            }
        }
        return all;
    }

    @GetMapping("/{calculation}")
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    HouseInputs getHouseCalculation(
            @PathVariable String house,
            @PathVariable String calculation,
            @RequestParam(required = false) @Nullable String assembly) {
        FilledCalculation one = filled.fill(house, calculation, assembly);
        Calculation<?, ?> declared = calculations.find(calculation);
        return new HouseInputs(
                calculation,
                declared.title(),
                one.assembly(),
                one.bindings(),
                LeavesJson.of(declared.inputs(), one.inputs()),
                one.relied(),
                missing(declared, one));
    }

    private static List<String> missing(Calculation<?, ?> declared, FilledCalculation one) {
        try {
            return Limits.violations(Canonical.read(declared.inputType(), one.inputs())).stream()
                    .map(Violation::sentence)
                    .toList();
        } catch (Refused refused) {
            return Stream.of(refused)
                    .flatMap(r -> r.violations().stream())
                    .map(Violation::sentence)
                    .toList();
        }
    }
}
