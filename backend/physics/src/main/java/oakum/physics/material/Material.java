package oakum.physics.material;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Limits;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Source;
import oakum.physics.calculation.Violation;
import org.jspecify.annotations.Nullable;

/**
 * One building material, immutable: what it was declared with, the curves through its points, and for each property
 * where it comes from. It knows what it was given and no more; {@link #require} refuses on behalf of a calculation that
 * needs more.
 */
public final class Material {
    /** Vapour permeability of still air, kg/(m s Pa), as ISO 13788 takes it. */
    public static final double AIR_PERMEABILITY_KG_PER_M_S_PA = 2.0e-10;

    /** Temperature at which the declared conductivity holds (ISO 10456, reference conditions). */
    static final double REFERENCE_C = 10;

    /** Below it liquid stands still where the vapour resistance falls with humidity. */
    public static final double LIQUID_FROM_HUMIDITY = 0.95;

    private static final double DIFFUSIVITY_FACTOR = 3.8;
    private static final double DIFFUSIVITY_BASE = 1000;

    private final MaterialInput values;
    private final Map<MaterialProperty, Source> sources;
    private final @Nullable HumidityCurve resistanceFactor;
    private final @Nullable HumidityCurve diffusionThickness;
    private final @Nullable Sorption sorption;

    private Material(MaterialInput values, Map<MaterialProperty, Source> sources) {
        this.values = values;
        this.sources = new EnumMap<>(sources);
        this.resistanceFactor = values.resistanceFactors().isEmpty()
                ? null
                : curve(
                        values.resistanceFactors(),
                        MaterialInput.FactorPoint::humidityFraction,
                        MaterialInput.FactorPoint::resistanceFactor);
        this.diffusionThickness = values.diffusionThicknesses().isEmpty()
                ? null
                : curve(
                        values.diffusionThicknesses(),
                        MaterialInput.ThicknessPoint::humidityFraction,
                        MaterialInput.ThicknessPoint::diffusionThicknessM);
        this.sorption = sorption(values);
    }

    /**
     * A material all of whose values come from one source, as a person types it.
     *
     * @throws Refused naming the material, the value and what is wrong with it
     */
    public static Material of(MaterialInput values) {
        return of(values, Map.of());
    }

    /**
     * A material with a source of its own for some properties.
     *
     * @param values what is known
     * @param sources by property; the others come from the source that stands in the values
     * @throws Refused naming the material, the value and what is wrong with it
     */
    public static Material of(MaterialInput values, Map<MaterialProperty, Source> sources) {
        List<Violation> found = new ArrayList<>(Limits.violations(values));
        if (found.isEmpty()) {
            check(values, found);
        }
        if (!found.isEmpty()) {
            throw new Refused(found.stream().map(v -> naming(values.label(), v)).toList());
        }
        Map<MaterialProperty, Source> all = new EnumMap<>(MaterialProperty.class);
        for (MaterialProperty property : MaterialProperty.values()) {
            all.put(property, sources.getOrDefault(property, new Source(values.source(), values.status())));
        }
        return new Material(values, all);
    }

    private static Violation naming(String material, Violation v) {
        return new Violation(
                v.field(),
                v.value(),
                v.min(),
                v.max(),
                v.unit(),
                v.source(),
                "Material \"" + material + "\": " + v.sentence());
    }

    private static void check(MaterialInput in, List<Violation> found) {
        if (!in.resistanceFactors().isEmpty() && !in.diffusionThicknesses().isEmpty()) {
            found.add(Violation.of(
                    "diffusionThicknesses",
                    in.diffusionThicknesses().size(),
                    "A vapour resistance factor and a diffusion thickness are both given; only one can hold.",
                    ""));
        }
        rises("resistanceFactors", in.resistanceFactors(), MaterialInput.FactorPoint::humidityFraction, found);
        falls(
                "resistanceFactors",
                "resistanceFactor",
                in.resistanceFactors(),
                MaterialInput.FactorPoint::resistanceFactor,
                found);
        rises("diffusionThicknesses", in.diffusionThicknesses(), MaterialInput.ThicknessPoint::humidityFraction, found);
        falls(
                "diffusionThicknesses",
                "diffusionThicknessM",
                in.diffusionThicknesses(),
                MaterialInput.ThicknessPoint::diffusionThicknessM,
                found);
        rises("sorption", in.sorption(), MaterialInput.SorptionPoint::humidityFraction, found);
        checkSorption(in, found);
        needs(in.waterUptakeKgPerM2SqrtS(), "waterUptakeKgPerM2SqrtS", in.saturationWaterKgPerM3(), found);
        MoistureSupplement supplement = in.moistureSupplement();
        if (supplement == MoistureSupplement.BY_MASS || supplement == MoistureSupplement.WOOD) {
            if (in.densityKgPerM3() == null) {
                found.add(missing("densityKgPerM3", "the change of conductivity with water needs it"));
            }
        }
        if ((supplement == MoistureSupplement.BY_MASS || supplement == MoistureSupplement.BY_VOLUME)
                && in.moistureCoefficient() == null) {
            found.add(missing("moistureCoefficient", "the change of conductivity with water needs it"));
        }
    }

    private static void checkSorption(MaterialInput in, List<Violation> found) {
        Double density = in.densityKgPerM3();
        Double saturation = in.saturationWaterKgPerM3();
        Double at80 = in.waterAt80PercentKgPerM3();
        if (at80 != null) {
            if (!in.sorption().isEmpty()) {
                found.add(Violation.of(
                        "waterAt80PercentKgPerM3",
                        at80,
                        "A sorption table and a single point at 80 % are both given; only one can hold.",
                        ""));
            } else if (saturation == null) {
                found.add(missing("saturationWaterKgPerM3", "the isotherm through the point at 80 % needs it"));
            } else if (at80 >= 0.8 * saturation) {
                found.add(Violation.of(
                        "waterAt80PercentKgPerM3",
                        at80,
                        "Water at 80 % (waterAt80PercentKgPerM3) = " + Canonical.text(at80)
                                + " kg/m3 must be below 0.8 times the water at 100 %, "
                                + Canonical.text(0.8 * saturation) + " kg/m3.",
                        ""));
            }
            return;
        }
        if (in.sorption().isEmpty()) {
            return;
        }
        if (density == null) {
            found.add(missing("densityKgPerM3", "a sorption table in shares of the dry mass needs it"));
        }
        if (saturation == null) {
            found.add(missing("saturationWaterKgPerM3", "a sorption table ends in it"));
        }
        if (density == null || saturation == null) {
            return;
        }
        double before = 0;
        for (int i = 0; i < in.sorption().size(); i++) {
            double water = in.sorption().get(i).waterFraction();
            if (water < before) {
                found.add(Violation.of(
                        "sorption[" + i + "].waterFraction",
                        Canonical.text(water),
                        "The sorption table falls: " + Canonical.text(water) + " at "
                                + Canonical.text(in.sorption().get(i).humidityFraction()) + " relative humidity after "
                                + Canonical.text(before) + " (sorption[" + i + "].waterFraction).",
                        ""));
            }
            before = water;
        }
        if (before * density > saturation) {
            found.add(Violation.of(
                    "saturationWaterKgPerM3",
                    Canonical.text(saturation),
                    "Water at 100 % relative humidity (saturationWaterKgPerM3) = " + Canonical.text(saturation)
                            + " kg/m3 lies below the last point of the sorption table, "
                            + Canonical.text(before * density) + " kg/m3.",
                    ""));
        }
    }

    private static <P> void rises(String list, List<P> points, ToDoubleFunction<P> humidity, List<Violation> found) {
        for (int i = 1; i < points.size(); i++) {
            double here = humidity.applyAsDouble(points.get(i));
            double before = humidity.applyAsDouble(points.get(i - 1));
            if (here <= before) {
                found.add(Violation.of(
                        list + "[" + i + "].humidityFraction",
                        Canonical.text(here),
                        "The points must rise in humidity: " + Canonical.text(here) + " (" + list + "[" + i
                                + "].humidityFraction) follows " + Canonical.text(before) + ".",
                        ""));
            }
        }
    }

    private static <P> void falls(
            String list, String component, List<P> points, ToDoubleFunction<P> value, List<Violation> found) {
        for (int i = 1; i < points.size(); i++) {
            double here = value.applyAsDouble(points.get(i));
            double before = value.applyAsDouble(points.get(i - 1));
            if (here > before) {
                found.add(Violation.of(
                        list + "[" + i + "]." + component,
                        Canonical.text(here),
                        "Vapour resistance rises with humidity, from " + Canonical.text(before) + " to "
                                + Canonical.text(here) + " (" + list + "[" + i + "]." + component
                                + "); it may only fall or stay.",
                        ""));
            }
        }
    }

    private static void needs(
            @Nullable Double value, String field, @Nullable Double saturation, List<Violation> found) {
        if (value != null && value > 0 && (saturation == null || saturation == 0)) {
            found.add(missing("saturationWaterKgPerM3", field + " above 0 needs it"));
        }
    }

    private static Violation missing(String field, String why) {
        return Violation.of(field, "", field + " is missing: " + why + ".", "");
    }

    private static <P> HumidityCurve curve(List<P> points, ToDoubleFunction<P> humidity, ToDoubleFunction<P> value) {
        return new HumidityCurve(
                points.stream().mapToDouble(humidity).toArray(),
                points.stream().mapToDouble(value).toArray());
    }

    private static @Nullable Sorption sorption(MaterialInput in) {
        Double saturation = in.saturationWaterKgPerM3();
        Double at80 = in.waterAt80PercentKgPerM3();
        Double density = in.densityKgPerM3();
        if (saturation == null) {
            return null;
        }
        if (at80 != null) {
            return new SorptionFormula(saturation, at80);
        }
        if (in.sorption().isEmpty() || density == null) {
            return null;
        }
        return new SorptionTable(
                in.sorption().stream()
                        .mapToDouble(MaterialInput.SorptionPoint::humidityFraction)
                        .toArray(),
                in.sorption().stream()
                        .mapToDouble(p -> density * p.waterFraction())
                        .toArray(),
                saturation);
    }

    public String id() {
        return values.id();
    }

    public String label() {
        return values.label();
    }

    /** What it was declared with. */
    public MaterialInput values() {
        return values;
    }

    /** Where a property comes from; of no meaning where {@link #knows} is false. */
    public Source source(MaterialProperty property) {
        return Objects.requireNonNull(sources.get(property));
    }

    /** Whether a property was given. */
    public boolean knows(MaterialProperty property) {
        return switch (property) {
            case DENSITY -> values.densityKgPerM3() != null;
            case HEAT_CAPACITY -> values.heatCapacityJPerKgK() != null;
            case CONDUCTIVITY -> values.conductivityWPerMK() != null;
            case CONDUCTIVITY_BY_TEMPERATURE -> values.conductivityByTemperaturePerK() != null;
            case CONDUCTIVITY_BY_WATER -> values.moistureSupplement() != null;
            case VAPOUR_RESISTANCE -> resistanceFactor != null || diffusionThickness != null;
            case SORPTION -> sorption != null;
            case SATURATION_WATER -> values.saturationWaterKgPerM3() != null;
            case WATER_UPTAKE -> values.waterUptakeKgPerM2SqrtS() != null;
            case AIR_PERMEANCE -> values.airPermeanceM3PerSM2() != null;
            case MOULD_SENSITIVITY -> values.mouldSensitivity() != null;
        };
    }

    /**
     * Refuses on behalf of a calculation that needs more than the material knows.
     *
     * @param field pointer to the layer that names the material
     * @throws Refused naming the material and every property it lacks
     */
    public void require(String field, MaterialProperty... properties) {
        List<Violation> absent = new ArrayList<>();
        for (MaterialProperty property : properties) {
            if (!knows(property)) {
                absent.add(Violation.of(
                        field,
                        id(),
                        "Material \"" + label() + "\" (" + field + ") has no " + property.label() + ".",
                        ""));
            }
        }
        if (!absent.isEmpty()) {
            throw new Refused(absent);
        }
    }

    /** Dry density, kg/m³. */
    public double densityKgPerM3() {
        return given(values.densityKgPerM3(), MaterialProperty.DENSITY);
    }

    /** Heat capacity of the dry material, J/(kg K). */
    public double heatCapacityJPerKgK() {
        return given(values.heatCapacityJPerKgK(), MaterialProperty.HEAT_CAPACITY);
    }

    /** Declared conductivity, W/(m K), at 10 °C and the water content it was declared for. */
    public double conductivityWPerMK() {
        return given(values.conductivityWPerMK(), MaterialProperty.CONDUCTIVITY);
    }

    /**
     * Conductivity at a temperature and water content: λ exp(f_T (θ − 10)), with the supplement for water (ISO 10456:2007
     * eq. 1 to 4; wood by the Wood Handbook's slope).
     *
     * @param temperatureC −60 to 90
     * @param waterKgPerM3 at least 0
     */
    public double conductivityWPerMK(double temperatureC, double waterKgPerM3) {
        double declared = conductivityWPerMK();
        Double byTemperature = values.conductivityByTemperaturePerK();
        double dryish =
                byTemperature == null ? declared : declared * Math.exp(byTemperature * (temperatureC - REFERENCE_C));
        MoistureSupplement supplement = values.moistureSupplement();
        if (supplement == null || supplement == MoistureSupplement.NONE) {
            return dryish;
        }
        double density = orZero(values.densityKgPerM3());
        return supplement.conductivityWPerMK(
                dryish,
                orZero(values.moistureCoefficient()),
                density,
                waterKgPerM3,
                orZero(values.conductivityWaterFraction()) * density);
    }

    /** Whether its vapour resistance belongs to the sheet as it is, whatever its thickness: a membrane or a coating. */
    public boolean isSheet() {
        return diffusionThickness != null;
    }

    /**
     * Diffusion-equivalent air layer thickness s_d, m, at the mean humidity of both faces. Where liquid is counted at
     * every water content the dry-cup value holds at every humidity.
     *
     * @param thicknessM of the layer; of no effect for a sheet
     * @param meanHumidityFraction of both faces
     */
    public double diffusionThicknessM(double thicknessM, double meanHumidityFraction) {
        HumidityCurve sheet = diffusionThickness;
        if (sheet != null) {
            return held(sheet, meanHumidityFraction);
        }
        return thicknessM * resistanceFactor(meanHumidityFraction);
    }

    /**
     * Vapour resistance factor μ at the mean humidity of both faces; see {@link #diffusionThicknessM} for the dry-cup rule.
     *
     * @param meanHumidityFraction of both faces
     */
    public double resistanceFactor(double meanHumidityFraction) {
        HumidityCurve factor = resistanceFactor;
        if (factor == null) {
            throw new IllegalStateException(label() + " has no vapour resistance factor");
        }
        return held(factor, meanHumidityFraction);
    }

    private double held(HumidityCurve curve, double meanHumidityFraction) {
        return liquidRule() == LiquidRule.WHOLE_RANGE ? curve.dry() : curve.at(meanHumidityFraction);
    }

    /**
     * Vapour permeance, kg/(s m² Pa), with the permeability of air of ISO 13788.
     *
     * @param thicknessM of the layer; of no effect for a sheet
     * @param meanHumidityFraction of both faces
     */
    public double permeanceKgPerSM2Pa(double thicknessM, double meanHumidityFraction) {
        return AIR_PERMEABILITY_KG_PER_M_S_PA / diffusionThicknessM(thicknessM, meanHumidityFraction);
    }

    /** Its isotherm. */
    public Sorption sorption() {
        Sorption known = sorption;
        if (known == null) {
            throw new IllegalStateException(label() + " has no " + MaterialProperty.SORPTION.label());
        }
        return known;
    }

    /** How liquid is counted. */
    public LiquidRule liquidRule() {
        LiquidRule rule = values.liquidRule();
        return rule == null ? LiquidRule.ABOVE_95_PERCENT : rule;
    }

    /**
     * Capillary diffusivity for suction, m²/s: 3.8 (A/w_f)² 1000^(w/w_f − 1) (Künzel 1995, from memory); 0 where no uptake
     * is known, and below 95 % relative humidity where the rule is {@link LiquidRule#ABOVE_95_PERCENT}.
     *
     * @param humidityFraction 0 to 1
     */
    public double liquidDiffusivityM2PerS(double humidityFraction) {
        Double uptake = values.waterUptakeKgPerM2SqrtS();
        Sorption isotherm = sorption;
        LiquidRule rule = liquidRule();
        if (uptake == null
                || uptake == 0
                || isotherm == null
                || rule == LiquidRule.NONE
                || (rule == LiquidRule.ABOVE_95_PERCENT && humidityFraction < LIQUID_FROM_HUMIDITY)) {
            return 0;
        }
        return liquidDiffusivityM2PerS(uptake, isotherm.saturationKgPerM3(), isotherm.waterKgPerM3(humidityFraction));
    }

    /** The equation of {@link #liquidDiffusivityM2PerS(double)} for a water content. */
    static double liquidDiffusivityM2PerS(double uptakeKgPerM2SqrtS, double saturationKgPerM3, double waterKgPerM3) {
        double ratio = uptakeKgPerM2SqrtS / saturationKgPerM3;
        return DIFFUSIVITY_FACTOR * ratio * ratio * Math.pow(DIFFUSIVITY_BASE, waterKgPerM3 / saturationKgPerM3 - 1);
    }

    private double given(@Nullable Double value, MaterialProperty property) {
        if (value == null) {
            throw new IllegalStateException(label() + " has no " + property.label());
        }
        return value;
    }

    private static double orZero(@Nullable Double value) {
        return value == null ? 0 : value;
    }

    @Override
    public String toString() {
        return id();
    }
}
