package oakum.portal.commissioning;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import oakum.physics.calculation.Unit;
import oakum.physics.filtration.CleanCurve;
import oakum.physics.housepressure.DeviceKind;
import oakum.physics.moistair.MoistAir;
import oakum.physics.moistair.StandardAtmosphere;
import oakum.portal.houserecord.AirPart;
import oakum.portal.houserecord.HouseRecord;
import oakum.portal.houserecord.HouseView;
import oakum.portal.houserecord.Proof;
import oakum.portal.houserecord.ValueOrigin;
import oakum.portal.houserecord.VolumeBasis;
import org.jspecify.annotations.Nullable;

/** What the design of one house says about what is measured, from one read of its record. */
final class HouseDesign {
    /** Of the final target, before insulation: a firm rule, no published source. */
    static final double ROUGH_IN_SHARE = 0.8;

    private static final String FIRM_RULES = "firm rules, edition 7";
    private static final String PRESSURE_CALCULATION = "house-pressure";
    private static final String PRESSURE_OUTPUT = "housePressurePa";

    private final HouseView house;
    private final AirPart air;
    private final Map<String, Proof> proofs;
    private final HouseRecord record;

    HouseDesign(HouseView house, AirPart air, Map<String, Proof> proofs, HouseRecord record) {
        this.house = house;
        this.air = air;
        this.proofs = proofs;
        this.record = record;
    }

    HouseView house() {
        return house;
    }

    List<DesignValue> of(Sheet sheet) {
        List<DesignValue> values = new ArrayList<>();
        switch (sheet) {
            case TIGHTNESS -> {
                DesignValue target = target(TightnessSent.TestStage.FINISHED, null);
                DesignValue roughIn = target(TightnessSent.TestStage.ROUGH_IN, null);
                if (target != null && roughIn != null) {
                    values.add(target);
                    values.add(roughIn);
                }
            }
            case FILTER_DROP -> {
                values.add(faceVelocityLimit());
                values.add(cleanDropLimit());
                air.filters().forEach(filter -> values.addAll(expectedDrops(filter)));
            }
            case HOUSE_PRESSURE -> {
                values.add(pressureLimit());
                values.add(failedPressureLimit());
                values.add(timeLimit());
                values.add(damperLimit());
                values.add(deliveredLimit());
                DesignValue pressure = designPressure(null);
                if (pressure != null) {
                    values.add(pressure);
                }
                DesignValue hood = hood();
                if (hood != null) {
                    values.add(hood);
                }
            }
        }
        return values;
    }

    VolumeBasis targetVolume(@Nullable VolumeBasis typed) {
        AirPart.Tightness tightness = air.tightness();
        if (tightness != null) {
            return tightness.volumeBasis();
        }
        return typed == null ? VolumeBasis.NET : typed;
    }

    /** The air changes that may be measured; null where neither record nor sheet says. */
    @Nullable
    DesignValue target(TightnessSent.TestStage stage, @Nullable Double typed) {
        AirPart.Tightness tightness = air.tightness();
        Double target = tightness == null ? typed : Double.valueOf(tightness.targetAch50PerH());
        if (target == null) {
            return null;
        }
        ValueSource source = tightness == null ? ValueSource.TYPED : ValueSource.RECORD;
        String path = tightness == null ? null : "air.tightness.targetAch50PerH";
        String origin = path == null ? ValueSource.TYPED.label() : origin(path);
        if (stage == TightnessSent.TestStage.FINISHED) {
            return DesignValue.of(
                    "targetAch50PerH",
                    "Air changes at 50 Pa, finished house",
                    Unit.PER_HOUR,
                    target,
                    source,
                    path,
                    origin);
        }
        return DesignValue.of(
                "roughInAch50PerH",
                "Air changes at 50 Pa, before insulation",
                Unit.PER_HOUR,
                ROUGH_IN_SHARE * target,
                source,
                path,
                "80 % of the target, " + FIRM_RULES + "; target: " + origin);
    }

    AirPart.@Nullable Filter filter(String id) {
        return air.filters().stream()
                .filter(filter -> filter.id().equals(id))
                .findFirst()
                .orElse(null);
    }

    /** Nominal area of all filters side by side, m². */
    static double faceAreaM2(AirPart.Filter filter) {
        return filter.widthM() * filter.heightM() * filter.count();
    }

    /** Density of the air through the filters, kg/m³; dry air at the altitude of the house. */
    double densityKgPerM3(double indoorC) {
        return MoistAir.dryAirDensityKgPerM3(indoorC, StandardAtmosphere.pressurePa(house.altitudeM()));
    }

    static @Nullable CleanCurve curve(AirPart.Filter filter) {
        Double linear = filter.curveLinearPaSPerM();
        Double square = filter.curveQuadraticPaS2PerM2();
        return linear == null || square == null ? null : new CleanCurve(linear, square);
    }

    /** What the filter's curve says at a flow; null where the record has no curve. */
    @Nullable
    DesignValue expectedDrop(AirPart.Filter filter, String label, double airflowM3PerS, double densityKgPerM3) {
        CleanCurve curve = curve(filter);
        if (curve == null) {
            return null;
        }
        String path = "air.filters[" + filter.id() + "].curveLinearPaSPerM";
        return DesignValue.of(
                "expectedDropPa",
                filter.label() + ", clean, " + label,
                Unit.PASCAL,
                curve.dropPa(airflowM3PerS / faceAreaM2(filter), densityKgPerM3),
                ValueSource.RECORD,
                path,
                "curve of the filter at this flow and density; " + origin(path));
    }

    private List<DesignValue> expectedDrops(AirPart.Filter filter) {
        List<DesignValue> values = new ArrayList<>();
        AirPart.AirHandler handler = air.airHandler();
        if (handler != null) {
            double density = densityKgPerM3(20);
            addExpected(values, filter, "high flow", handler.highFlowM3PerS(), density);
            addExpected(values, filter, "continuous low flow", handler.lowFlowM3PerS(), density);
        }
        return values;
    }

    private void addExpected(
            List<DesignValue> values, AirPart.Filter filter, String label, @Nullable Double flow, double density) {
        DesignValue drop = flow == null || flow == 0 ? null : expectedDrop(filter, label, flow, density);
        if (drop != null) {
            values.add(drop);
        }
    }

    DesignValue faceVelocityLimit() {
        AirPart.AirLimits limits = air.limits();
        return limit(
                "faceVelocityMPerS",
                "Face velocity, at most",
                Unit.METRE_PER_SECOND,
                limits == null ? null : limits.faceVelocityMPerS(),
                1.0);
    }

    DesignValue cleanDropLimit() {
        AirPart.AirLimits limits = air.limits();
        return limit(
                "cleanDropPa", "Clean drop, at most", Unit.PASCAL, limits == null ? null : limits.cleanDropPa(), 25);
    }

    DesignValue pressureLimit() {
        AirPart.AirLimits limits = air.limits();
        return limit(
                "housePressurePa",
                "House pressure with make-up air, at most",
                Unit.HOUSE_PASCAL,
                limits == null ? null : limits.housePressurePa(),
                5);
    }

    DesignValue failedPressureLimit() {
        AirPart.AirLimits limits = air.limits();
        return limit(
                "failedMakeUpPressurePa",
                "House pressure after make-up air failed, at most",
                Unit.HOUSE_PASCAL,
                limits == null ? null : limits.failedMakeUpPressurePa(),
                10);
    }

    DesignValue timeLimit() {
        return rule("heldAfterS", "Back within the limit after", Unit.SECOND, 60);
    }

    DesignValue damperLimit() {
        return rule("damperOpenS", "Damper proves open after, at most", Unit.SECOND, 15);
    }

    DesignValue deliveredLimit() {
        return rule("deliveredC", "Make-up air delivered at, at least", Unit.CELSIUS, 10);
    }

    /** How far below outdoors the design expects the house; null where neither proof nor sheet says. */
    @Nullable
    DesignValue designPressure(@Nullable Double typed) {
        Proof proof = proofs.values().stream()
                .filter(p -> PRESSURE_CALCULATION.equals(p.content().calculation())
                        && p.content().outputs().containsKey(PRESSURE_OUTPUT))
                .max(Comparator.comparing(Proof::madeAt))
                .orElse(null);
        String label = "House pressure below outdoors, as designed";
        if (proof != null) {
            return DesignValue.of(
                    "designPressurePa",
                    label,
                    Unit.HOUSE_PASCAL,
                    Double.parseDouble(proof.content().outputs().get(PRESSURE_OUTPUT)),
                    ValueSource.PROOF,
                    "results." + proof.key() + "." + PRESSURE_OUTPUT,
                    proof.content().title() + ", issue " + proof.issue() + ", copy code "
                            + proof.content().copyCode());
        }
        return typed == null
                ? null
                : DesignValue.of(
                        "designPressurePa",
                        label,
                        Unit.HOUSE_PASCAL,
                        typed,
                        ValueSource.TYPED,
                        null,
                        ValueSource.TYPED.label());
    }

    /** The flow of the range hood, or null where the record has none. */
    @Nullable
    DesignValue hood() {
        return air.exhaust().stream()
                .filter(exhaust -> exhaust.kind() == DeviceKind.RANGE_HOOD)
                .findFirst()
                .map(exhaust -> {
                    String path = "air.exhaust[" + exhaust.id() + "].ratedFlowM3PerS";
                    return DesignValue.of(
                            "hoodM3PerS",
                            exhaust.label(),
                            Unit.CUBIC_METRE_PER_SECOND,
                            exhaust.ratedFlowM3PerS(),
                            ValueSource.RECORD,
                            path,
                            origin(path));
                })
                .orElse(null);
    }

    private DesignValue limit(String name, String label, Unit unit, @Nullable Double inRecord, double otherwise) {
        if (inRecord == null) {
            return rule(name, label, unit, otherwise);
        }
        String path = "air.limits." + name;
        return DesignValue.of(name, label, unit, inRecord, ValueSource.RECORD, path, origin(path));
    }

    private static DesignValue rule(String name, String label, Unit unit, double value) {
        return DesignValue.of(name, label, unit, value, ValueSource.FIRM_RULE, null, FIRM_RULES);
    }

    private String origin(String path) {
        ValueOrigin origin = record.originsOf(house.id(), Set.of(path)).get(path);
        return origin == null
                ? ValueSource.RECORD.label()
                : "revision " + origin.revision() + ", " + origin.madeBy() + ": " + origin.reason();
    }
}
