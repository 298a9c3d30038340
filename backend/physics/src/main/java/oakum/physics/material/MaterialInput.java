package oakum.physics.material;

import java.util.List;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Source;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/**
 * A material as a person types it from a data sheet, or the library's table gives it. Whatever is left out the material
 * does not know; a calculation that needs it says so.
 */
public record MaterialInput(
        @Entry(
                label = "Short name",
                help = "Names the material in a layer; letters, digits and hyphens.",
                maxLength = 60)
        String id,

        @Entry(label = "Name") String label,

        @Quantity(
                label = "Density, dry",
                symbol = "ρ",
                unit = Unit.KILOGRAM_PER_CUBIC_METRE,
                min = 1,
                max = 12_000,
                limitSource = PlausibleRange.SOURCE)
        @Nullable
        Double densityKgPerM3,

        @Quantity(
                label = "Heat capacity, dry",
                symbol = "c",
                unit = Unit.JOULE_PER_KILOGRAM_KELVIN,
                min = 100,
                max = 5000,
                limitSource = PlausibleRange.SOURCE)
        @Nullable
        Double heatCapacityJPerKgK,

        @Quantity(
                label = "Conductivity",
                symbol = "λ",
                unit = Unit.WATT_PER_METRE_KELVIN,
                min = 0.001,
                max = 500,
                limitSource = PlausibleRange.SOURCE,
                help = "At 10 °C and the water content named beside it.")
        @Nullable
        Double conductivityWPerMK,

        @Quantity(
                label = "Water at which the conductivity holds",
                symbol = "u",
                unit = Unit.FRACTION,
                min = 0,
                max = 0.5,
                limitSource = PlausibleRange.SOURCE,
                help = "Share of the dry mass. Left out: dry.")
        @Nullable
        Double conductivityWaterFraction,

        @Quantity(
                label = "Change of conductivity with temperature",
                symbol = "f_T",
                unit = Unit.PER_KELVIN,
                min = -0.02,
                max = 0.02,
                limitSource = PlausibleRange.SOURCE)
        @Nullable
        Double conductivityByTemperaturePerK,

        @Entry(label = "Change of conductivity with water") @Nullable
        MoistureSupplement moistureSupplement,

        @Quantity(
                label = "Coefficient of the change with water",
                symbol = "f",
                unit = Unit.ONE,
                min = 0,
                max = 20,
                limitSource = PlausibleRange.SOURCE)
        @Nullable
        Double moistureCoefficient,

        @Entry(
                label = "Vapour resistance factor over humidity",
                help = "For materials with a thickness. One point where it does not change.",
                maxRows = 20)
        List<FactorPoint> resistanceFactors,

        @Entry(
                label = "Diffusion thickness over humidity",
                help = "For membranes and coatings, in place of the factor.",
                maxRows = 20)
        List<ThicknessPoint> diffusionThicknesses,

        @Entry(
                label = "Sorption",
                help = "Water in balance with air between 0 and 100 % relative humidity.",
                maxRows = 30)
        List<SorptionPoint> sorption,

        @Quantity(
                label = "Water at 80 % relative humidity",
                symbol = "w80",
                unit = Unit.KILOGRAM_PER_CUBIC_METRE,
                min = 0,
                minExclusive = true,
                max = 1000,
                limitSource = PlausibleRange.SOURCE,
                help = "For mineral materials whose data sheet gives no other point; in place of the table.")
        @Nullable
        Double waterAt80PercentKgPerM3,

        @Quantity(
                label = "Water at 100 % relative humidity",
                symbol = "w_f",
                unit = Unit.KILOGRAM_PER_CUBIC_METRE,
                min = 0,
                max = 1000,
                limitSource = PlausibleRange.SOURCE)
        @Nullable
        Double saturationWaterKgPerM3,

        @Quantity(
                label = "Capillary water uptake",
                symbol = "A",
                unit = Unit.WATER_UPTAKE,
                min = 0,
                max = 2,
                limitSource = PlausibleRange.SOURCE)
        @Nullable
        Double waterUptakeKgPerM2SqrtS,

        @Entry(label = "How liquid is counted", help = "Left out: only above 95 % relative humidity.") @Nullable
        LiquidRule liquidRule,

        @Quantity(
                label = "Air permeance at 75 Pa, at most",
                unit = Unit.FLOW_PER_AREA,
                min = 0,
                max = 1,
                limitSource = PlausibleRange.SOURCE)
        @Nullable
        Double airPermeanceM3PerSM2,

        @Entry(label = "Mould sensitivity") @Nullable MouldSensitivity mouldSensitivity,

        @Entry(
                label = "Source of the values",
                help = "Data sheet, standard or test report with its date.",
                maxLength = 300)
        String source,

        @Entry(label = "How well the source was seen") Source.Status status) {

    public MaterialInput {
        resistanceFactors = resistanceFactors == null ? List.of() : List.copyOf(resistanceFactors);
        diffusionThicknesses = diffusionThicknesses == null ? List.of() : List.copyOf(diffusionThicknesses);
        sorption = sorption == null ? List.of() : List.copyOf(sorption);
    }

    /** One test of vapour resistance. */
    public record FactorPoint(
            @Quantity(
                    label = "Mean relative humidity of both faces",
                    symbol = "φ",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = PlausibleRange.SOURCE)
            double humidityFraction,

            @Quantity(
                    label = "Vapour resistance factor",
                    symbol = "μ",
                    unit = Unit.ONE,
                    min = 0.5,
                    max = 1e6,
                    limitSource = PlausibleRange.SOURCE)
            double resistanceFactor) {}

    /** One test of a membrane. */
    public record ThicknessPoint(
            @Quantity(
                    label = "Mean relative humidity of both faces",
                    symbol = "φ",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = PlausibleRange.SOURCE)
            double humidityFraction,

            @Quantity(
                    label = "Diffusion thickness",
                    symbol = "s_d",
                    unit = Unit.METRE,
                    min = 0.001,
                    max = 10_000,
                    limitSource = PlausibleRange.SOURCE)
            double diffusionThicknessM) {}

    /** One point of an isotherm. */
    public record SorptionPoint(
            @Quantity(
                    label = "Relative humidity",
                    symbol = "φ",
                    unit = Unit.FRACTION,
                    min = 0.001,
                    max = 0.999,
                    limitSource = PlausibleRange.SOURCE)
            double humidityFraction,

            @Quantity(
                    label = "Water, share of the dry mass",
                    symbol = "u",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 10,
                    limitSource = PlausibleRange.SOURCE)
            double waterFraction) {}
}
