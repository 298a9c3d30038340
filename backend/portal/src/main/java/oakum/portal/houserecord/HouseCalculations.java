package oakum.portal.houserecord;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import oakum.physics.calculation.Answer;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Refused;
import oakum.portal.calculation.Calculations;
import oakum.portal.houserecord.EnclosurePart.Assembly;
import oakum.portal.houserecord.standing.Binding;
import oakum.portal.houserecord.standing.Resolved;
import oakum.portal.http.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;

/** Calculations with their inputs from the record of a house. Computes, stores nothing. */
@Service
public class HouseCalculations {
    private final HouseRecord record;
    private final Calculations calculations;

    HouseCalculations(HouseRecord record, Calculations calculations) {
        this.record = record;
        this.calculations = calculations;
    }

    /** The ids of the calculations that mean something for an assembly and answer at once, in printed order. */
    public List<String> about(Assembly assembly) {
        return calculations.all().stream()
                .map(Calculation::id)
                .filter(id -> EnclosureBindings.PER_ASSEMBLY.contains(id) && EnclosureBindings.applies(id, assembly))
                .filter(id -> !EnclosureBindings.LONG.contains(id))
                .toList();
    }

    /**
     * Draws the inputs of a calculation from the record as it is now.
     *
     * @param calculation id of a calculation
     * @param assembly short name of an assembly; null for a calculation about the house
     * @throws Problem 404 where there is no such calculation or assembly, or the record fills none of its inputs
     */
    public FilledCalculation fill(String houseId, String calculation, @Nullable String assembly) {
        return fill(record.snapshot(houseId), calculation, assembly);
    }

    /** The same from a record that was read already. */
    public FilledCalculation fill(Snapshot snapshot, String calculation, @Nullable String assembly) {
        Calculation<?, ?> found = calculations.find(calculation);
        boolean perAssembly = EnclosureBindings.PER_ASSEMBLY.contains(calculation);
        boolean ofAir = calculation.equals(AirBindings.HOUSE_PRESSURE);
        if (!perAssembly && !ofAir && !EnclosureBindings.PER_HOUSE.contains(calculation)) {
            throw Problem.notFound("calculation from the record of a house", calculation);
        }
        Assembly about = perAssembly ? assembly(snapshot, assembly) : null;
        List<Binding> bindings;
        if (about != null) {
            bindings = EnclosureBindings.ofAssembly(calculation, snapshot, about);
        } else {
            bindings = ofAir
                    ? AirBindings.housePressure(snapshot)
                    : EnclosureBindings.ofHouse(calculation, snapshot, id -> uValue(snapshot, id));
        }
        Map<String, String> values = record.standing(snapshot).withResults(snapshot.values());
        Resolved resolved = Resolved.of(bindings, found.inputs(), values);
        return new FilledCalculation(
                calculation, about == null ? null : about.id(), bindings, resolved.inputs(), resolved.relied());
    }

    /**
     * Computes what was filled.
     *
     * @throws Refused where the record leaves something out or breaks a limit
     */
    public Answer<?, ?> answer(FilledCalculation filled) {
        return calculations.calculateFlat(filled.calculation(), filled.inputs());
    }

    /** The U-value of an assembly as it is now, as text; empty where its layers do not say it. */
    private Optional<String> uValue(Snapshot snapshot, String assembly) {
        try {
            Answer<?, ?> answer = answer(fill(snapshot, EnclosureBindings.RESISTANCE, assembly));
            return Optional.ofNullable(Canonical.flatten(answer.printed()).get(EnclosureBindings.U_VALUE));
        } catch (Refused refused) {
            return Optional.empty();
        }
    }

    private static Assembly assembly(Snapshot snapshot, @Nullable String id) {
        return snapshot.parts().enclosure().assemblies().stream()
                .filter(assembly -> assembly.id().equals(id))
                .findFirst()
                .orElseThrow(() -> Problem.notFound("assembly", String.valueOf(id)));
    }
}
