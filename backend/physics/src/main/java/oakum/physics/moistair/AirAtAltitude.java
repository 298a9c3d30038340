package oakum.physics.moistair;

import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Source;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/** Pressure and density of the air at a place's altitude. */
public final class AirAtAltitude {
    private static final Source HANDBOOK =
            Source.fromMemory("ASHRAE Fundamentals ch. 1, eq. 3 and 4 (ICAO standard atmosphere)");
    private static final Source REDUCTION = Source.fromMemory(
            "reduction to sea level with the mean temperature of the air column, as weather services do it");
    private static final double REFERENCE_DENSITY_KG_PER_M3 =
            MoistAir.dryAirDensityKgPerM3(20, MoistAir.STANDARD_PRESSURE_PA);

    public static final Calculation<Input, Output> CALCULATION = Calculation.declare(
                    "standard-atmosphere", "1.0", "Air at altitude", Input.class, Output.class)
            .purpose("Tells how thin the air of a place is, for fans, filters, heaters and heat pumps.")
            .equation("p = 101325·(1 − 2.25577e-5·Z)^5.2559", HANDBOOK)
            .equation("t = 15 − 0.0065·Z where no temperature is given", HANDBOOK)
            .equation("ρ = p/(287.042·(t + 273.15)), dry air", HANDBOOK)
            .equation("p0 = p·exp(Z/Hs), Hs = 287.055·(t + 273.15 + 0.0065·Z/2)/9.807", REDUCTION)
            .source(HANDBOOK)
            .source(REDUCTION)
            .validation("ASHRAE Fundamentals 2017 ch. 1 table 1 and a published reduction to sea level, both as an open"
                    + " library's tests quote them.")
            .by(AirAtAltitude::compute);

    private AirAtAltitude() {}

    /** A place and, where known, its air. */
    public record Input(
            @Quantity(
                    label = "Altitude",
                    symbol = "Z",
                    unit = Unit.METRE,
                    min = Ranges.LOWEST_ALTITUDE_M,
                    max = Ranges.HIGHEST_ALTITUDE_M,
                    limitSource = Ranges.ATMOSPHERE)
            double altitudeM,

            @Quantity(
                    label = "Air temperature",
                    symbol = "t",
                    unit = Unit.CELSIUS,
                    min = Ranges.COLDEST_C,
                    max = Ranges.HOTTEST_C,
                    limitSource = Ranges.TABLES,
                    help = "Left out: the standard atmosphere's own.")
            @Nullable
            Double temperatureC,

            @Quantity(
                    label = "Measured air pressure",
                    symbol = "p",
                    unit = Unit.AIR_PASCAL,
                    min = Ranges.LEAST_PRESSURE_PA,
                    max = Ranges.GREATEST_PRESSURE_PA,
                    limitSource = Ranges.ATMOSPHERE,
                    help = "As a barometer on the spot shows it. Left out: the standard atmosphere's own.")
            @Nullable
            Double measuredPressurePa) {}

    /** The air there. */
    public record Output(
            @Quantity(label = "Standard pressure", symbol = "p", unit = Unit.AIR_PASCAL, step = 10, leading = true)
            double standardPressurePa,

            @Quantity(label = "Air temperature", symbol = "t", unit = Unit.CELSIUS, step = 0.1)
            double temperatureC,

            @Quantity(
                    label = "Density of dry air",
                    symbol = "ρ",
                    unit = Unit.KILOGRAM_PER_CUBIC_METRE,
                    step = 0.001,
                    leading = true)
            double densityKgPerM3,

            @Quantity(
                    label = "Density against 20 °C at sea level",
                    unit = Unit.FRACTION,
                    step = 0.001,
                    help = "A fan moves the same volume, and so this share of the mass.")
            double densityShareFraction,

            @Quantity(
                    label = "Pressure reduced to sea level",
                    symbol = "p0",
                    unit = Unit.AIR_PASCAL,
                    step = 10,
                    help = "What a weather service would print.")
            double seaLevelPressurePa) {}

    private static Output compute(Input in) {
        double standard = StandardAtmosphere.pressurePa(in.altitudeM());
        double pressure = in.measuredPressurePa() == null ? standard : in.measuredPressurePa();
        double temperature =
                in.temperatureC() == null ? StandardAtmosphere.temperatureC(in.altitudeM()) : in.temperatureC();
        double density = MoistAir.dryAirDensityKgPerM3(temperature, pressure);
        return new Output(
                standard,
                temperature,
                density,
                density / REFERENCE_DENSITY_KG_PER_M3,
                StandardAtmosphere.seaLevelPressurePa(pressure, in.altitudeM(), temperature));
    }
}
