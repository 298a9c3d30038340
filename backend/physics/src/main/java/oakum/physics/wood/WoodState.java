package oakum.physics.wood;

import java.util.ArrayList;
import java.util.List;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Limits;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/** Moisture, shrinkage and heat of a piece of wood. */
public final class WoodState {
    private static final double LEAST_GRAVITY = 0.3;
    private static final double MOST_CONDUCTIVITY_MOISTURE = 0.25;

    public static final Calculation<Input, Result> CALCULATION = Calculation.declare(
                    "wood-moisture", "1.0", "Wood: moisture, shrinkage, heat", Input.class, Result.class)
            .purpose(
                    "Gives the moisture that wood comes to in air, or the air that leaves it a moisture, and what it has"
                            + " shrunk and how it carries heat there.")
            .equation(
                    "M = 1800/W · (K h/(1 − K h) + (K1 K h + 2 K1 K2 K² h²)/(1 + K1 K h + K1 K2 K² h²)) %",
                    Citations.EQUILIBRIUM)
            .equation("S = S0 (30 − M)/30 %", Citations.SHRINKAGE)
            .equation("k = G (0.1941 + 0.004064 M) + 0.01864 W/(m K), G = Gb/(1 − S/100)", Citations.THERMAL)
            .equation(
                    "cp = (cp0 + 4.18 M/100)/(1 + M/100) + M (−0.06191 + 2.36e-4 T − 1.33e-4 M) kJ/(kg K), cp0 = 0.1031"
                            + " + 0.003867 T",
                    Citations.THERMAL)
            .source(Citations.EQUILIBRIUM)
            .source(Citations.PRACTICAL)
            .source(Citations.SHRINKAGE)
            .source(Citations.THERMAL)
            .validation("35 entries of the printed table of equilibrium moisture, and the printed examples of"
                    + " conductivity and heat capacity.")
            .by(WoodState::compute);

    private WoodState() {}

    /** A piece of wood. */
    public record Input(
            @Entry(label = "Species") WoodSpecies species,

            @Quantity(
                    label = "Temperature",
                    symbol = "T",
                    unit = Unit.CELSIUS,
                    min = WoodMoisture.COLDEST_C,
                    max = WoodMoisture.WARMEST_C,
                    limitSource = Citations.FIT,
                    advisedMin = -1.2,
                    advisedMax = 55,
                    advisedSource = "USDA Wood Handbook table 4-2 begins at 30 °F")
            double temperatureC,

            @Entry(label = "Condition") WoodCondition condition,

            @Quantity(
                    label = "Basic specific gravity",
                    symbol = "Gb",
                    unit = Unit.ONE,
                    min = 0.1,
                    max = 1.2,
                    limitSource = Citations.PLAUSIBLE,
                    help = "Oven-dry mass over green volume; leave out where conductivity is not asked for.")
            @Nullable
            Double basicGravity) {}

    /** What it is there. */
    public record Result(
            @Quantity(label = "Moisture", symbol = "M", unit = Unit.FRACTION, step = 0.00001, leading = true)
            double moistureFraction,

            @Quantity(
                    label = "Relative humidity in balance with it",
                    symbol = "h",
                    unit = Unit.FRACTION,
                    step = 0.0001,
                    leading = true,
                    help = "Absent where the wood is wetter than any air leaves it.")
            @Nullable
            Double relativeHumidityFraction,

            @Quantity(label = "Shrunk across the rings since green", unit = Unit.FRACTION, step = 0.0001) @Nullable
            Double radialShrinkageFraction,

            @Quantity(label = "Shrunk along the rings since green", unit = Unit.FRACTION, step = 0.0001) @Nullable
            Double tangentialShrinkageFraction,

            @Quantity(label = "Shrunk in volume since green", unit = Unit.FRACTION, step = 0.0001) @Nullable
            Double volumetricShrinkageFraction,

            @Quantity(label = "Specific gravity at this moisture", symbol = "G", unit = Unit.ONE, step = 0.001)
            @Nullable
            Double gravity,

            @Quantity(
                    label = "Conductivity across the grain",
                    symbol = "k",
                    unit = Unit.WATT_PER_METRE_KELVIN,
                    step = 0.0001)
            @Nullable
            Double conductivityWPerMK,

            @Quantity(label = "Heat capacity", symbol = "cp", unit = Unit.JOULE_PER_KILOGRAM_KELVIN, step = 1)
            double heatCapacityJPerKgK,

            List<Notice> notices)
            implements HasNotices {}

    private static Result compute(Input input) {
        double moisture = input.condition().moistureFraction("condition", input.temperatureC());
        WoodSpecies.Shrinkage shrinkage = input.species().shrinkage();
        Double basic = input.basicGravity();
        Double gravity = shrinkage == null || basic == null
                ? null
                : (Double) WoodHeat.gravity(basic, shrinkage.volumetricPercent(), moisture);
        List<Notice> said = new ArrayList<>(Limits.advice(input));
        Double conductivity = null;
        if (gravity != null) {
            if (gravity > LEAST_GRAVITY && moisture <= MOST_CONDUCTIVITY_MOISTURE) {
                conductivity = WoodHeat.conductivityWPerMK(gravity, moisture);
            } else {
                said.add(Notice.advice(
                        "no-conductivity-here",
                        "conductivityWPerMK",
                        "The equation of conductivity is for a specific gravity above 0.3 and moisture up to 25 %.",
                        Citations.THERMAL));
            }
        }
        double wettest = WoodMoisture.equilibriumFraction(input.temperatureC(), 1);
        return new Result(
                moisture,
                moisture > wettest
                        ? null
                        : (Double) WoodMoisture.relativeHumidityFraction(input.temperatureC(), moisture),
                shrinkage == null ? null : (Double) shrunk(shrinkage.radialPercent(), moisture),
                shrinkage == null ? null : (Double) shrunk(shrinkage.tangentialPercent(), moisture),
                shrinkage == null ? null : (Double) shrunk(shrinkage.volumetricPercent(), moisture),
                gravity,
                conductivity,
                WoodHeat.heatCapacityJPerKgK(input.temperatureC(), moisture),
                List.copyOf(said));
    }

    private static double shrunk(double fullPercent, double moisture) {
        return WoodSpecies.Shrinkage.atMoisture(fullPercent, moisture) / 100;
    }
}
