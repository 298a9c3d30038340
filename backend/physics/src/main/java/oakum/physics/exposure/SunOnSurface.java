package oakum.physics.exposure;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Source;
import oakum.physics.calculation.Unit;
import oakum.physics.weather.Place;
import oakum.physics.weather.SkyModel;
import oakum.physics.weather.SkyModel.SkyLight;
import oakum.physics.weather.SkyTemperature;
import oakum.physics.weather.SolarPosition;
import oakum.physics.weather.SolarRadiation;
import oakum.physics.weather.TiltedSurface;
import oakum.physics.weather.TiltedSurface.Irradiance;

/** Where the sun stands, what falls on a tilted surface, and how warm the surface takes the air to be. */
public final class SunOnSurface {
    private static final Source SUN =
            Source.fromMemory("Meeus, Astronomical Algorithms, in the short form of the US" + " weather service");
    private static final Source TILTED =
            Source.seen("open tests of a solar library: incidence, ground, Hay-Davies and Perez skies");
    private static final Source SKY =
            Source.fromMemory("Clark and Allen 1978 with the clouds of Walton 1983, sky emissivity");
    private static final Source EQUIVALENT = Source.fromMemory("ISO 13790 and ISO 6946, combined outer film");

    public static final Calculation<Input, Result> CALCULATION = Calculation.declare(
                    "sun-on-a-surface", "1.0", "Sun on a surface", Input.class, Result.class)
            .purpose("Gives where the sun stands at a moment, what falls on a wall, roof or window, and the equivalent"
                    + " temperature outside with sun and sky.")
            .equation("cos z = sin φ sin δ + cos φ cos δ cos ω", SUN)
            .equation("cos θ = cos z cos S + sin z sin S cos(A − A_S); beam = DNI · max(0, cos θ)", TILTED)
            .equation("ground = albedo · GHI · (1 − cos S)/2; sky by the model chosen", TILTED)
            .equation("ε_sky = (0.787 + 0.764 ln(T_dp/273)) (1 + 0.0224 N − 0.0035 N² + 0.00028 N³)", SKY)
            .equation("t_eq = t_a + (α I − ε F σ (T_a⁴ − T_sky⁴))/h", EQUIVALENT)
            .source(SUN)
            .source(TILTED)
            .source(SKY)
            .source(EQUIVALENT)
            .validation("Position of the sun against the published example of NREL's algorithm and an independent"
                    + " ephemeris; tilted surfaces against the tests of an open solar library.")
            .by(SunOnSurface::compute);

    private static final double SECONDS_PER_HOUR = 3600;
    private static final double MISFIT_W_PER_M2 = 30;

    private SunOnSurface() {}

    /** A moment, its light and air, and the surface. */
    public record Input(
            @Entry(label = "Place") Place place,

            @Quantity(
                    label = "Year",
                    unit = Unit.COUNT,
                    min = 1950,
                    max = 2050,
                    limitSource = "the short set was compared with an ephemeris between 1950 and 2050",
                    help = "Any year will do within a few hundredths of a degree.")
            int yearCount,

            @Quantity(label = "Month", unit = Unit.COUNT, min = 1, max = 12, limitSource = "calendar")
            int monthCount,

            @Quantity(label = "Day", unit = Unit.COUNT, min = 1, max = 31, limitSource = "calendar")
            int dayCount,

            @Quantity(
                    label = "Standard time",
                    unit = Unit.HOUR,
                    min = 0,
                    max = 24,
                    limitSource = "a day has 24 hours",
                    help = "Without summer time; 14.5 is half past two.")
            double standardTimeH,

            @Quantity(
                    label = "Tilt",
                    symbol = "S",
                    unit = Unit.DEGREE,
                    min = 0,
                    max = 180,
                    limitSource = InputRange.ANGLE,
                    help = "0 level, 90 a wall.")
            double tiltDeg,

            @Quantity(
                    label = "Facing",
                    symbol = "A_S",
                    unit = Unit.DEGREE,
                    min = 0,
                    max = 360,
                    limitSource = InputRange.ANGLE,
                    help = "Clockwise from north: 90 east, 180 south.")
            double facingDeg,

            @Quantity(
                    label = "Direct light, facing the sun",
                    symbol = "DNI",
                    unit = Unit.WATT_PER_SQUARE_METRE,
                    min = 0,
                    max = 1400,
                    limitSource = InputRange.SUNLIGHT)
            double directWPerM2,

            @Quantity(
                    label = "Diffuse light on level ground",
                    symbol = "DHI",
                    unit = Unit.WATT_PER_SQUARE_METRE,
                    min = 0,
                    max = 1000,
                    limitSource = InputRange.SUNLIGHT)
            double diffuseWPerM2,

            @Quantity(
                    label = "Light the ground throws back",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = InputRange.SHARE,
                    help = "20 % without snow, 70 % with fresh snow.")
            double albedoFraction,

            @Entry(label = "Sky") SkyModel skyModel,

            @Quantity(
                    label = "Air temperature",
                    symbol = "t_a",
                    unit = Unit.CELSIUS,
                    min = -70,
                    max = 60,
                    limitSource = InputRange.WEATHER)
            double airTemperatureC,

            @Quantity(label = "Dew point", unit = Unit.CELSIUS, min = -70, max = 40, limitSource = InputRange.WEATHER)
            double dewPointC,

            @Quantity(
                    label = "Cloud cover",
                    symbol = "N",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = InputRange.SHARE)
            double cloudFraction,

            @Quantity(
                    label = "Sun taken up",
                    symbol = "α",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = InputRange.SHARE,
                    help = "30 to 40 % light, 70 to 85 % dark wood.")
            double absorptanceFraction,

            @Quantity(
                    label = "Emissivity",
                    symbol = "ε",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = InputRange.SHARE)
            double emissivityFraction,

            @Quantity(
                    label = "Sky in view",
                    symbol = "F",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = InputRange.SHARE,
                    help = "50 % for a wall in the open, 100 % for a level roof.")
            double skyViewFraction,

            @Quantity(
                    label = "Outer film",
                    symbol = "h",
                    unit = Unit.WATT_PER_SQUARE_METRE_KELVIN,
                    min = 1,
                    max = 200,
                    limitSource = "wider than any film in air; common practice, no published source",
                    advisedMin = 8,
                    advisedMax = 40,
                    advisedSource = "ISO 6946, 25 W/(m²·K) at 4 m/s, from memory")
            double filmWPerM2K) {}

    /** Sun and sky. */
    public record Result(
            @Quantity(label = "Sun from the vertical", symbol = "z", unit = Unit.DEGREE, step = 0.01)
            double zenithDeg,

            @Quantity(label = "Sun from north, clockwise", symbol = "A", unit = Unit.DEGREE, step = 0.01)
            double azimuthDeg,

            @Quantity(label = "Cosine of the angle to the surface", symbol = "cos θ", unit = Unit.ONE, step = 0.0001)
            double cosIncidence,

            @Quantity(label = "From the sun", unit = Unit.WATT_PER_SQUARE_METRE, step = 0.1)
            double beamWPerM2,

            @Quantity(label = "From the sky", unit = Unit.WATT_PER_SQUARE_METRE, step = 0.1)
            double skyWPerM2,

            @Quantity(label = "Thrown back by the ground", unit = Unit.WATT_PER_SQUARE_METRE, step = 0.1)
            double groundWPerM2,

            @Quantity(
                    label = "On the surface",
                    symbol = "I",
                    unit = Unit.WATT_PER_SQUARE_METRE,
                    step = 0.1,
                    leading = true)
            double totalWPerM2,

            @Quantity(label = "Temperature of the sky", unit = Unit.CELSIUS, step = 0.1)
            double skyTemperatureC,

            @Quantity(
                    label = "Equivalent temperature outside",
                    symbol = "t_eq",
                    unit = Unit.CELSIUS,
                    step = 0.1,
                    leading = true)
            double equivalentTemperatureC,

            List<Notice> notices)
            implements HasNotices {}

    private static Result compute(Input input) {
        LocalDate date = date(input);
        double second = date.atStartOfDay(ZoneOffset.UTC).toEpochSecond()
                + (input.standardTimeH() - input.place().standardOffsetH()) * SECONDS_PER_HOUR;
        SolarPosition sun = SolarPosition.at(
                input.place().latitudeDeg(),
                input.place().longitudeDeg(),
                Instant.ofEpochMilli(Math.round(1000 * second)));
        List<Notice> notices = new ArrayList<>();
        double direct = input.directWPerM2();
        if (sun.zenithDeg() >= 90 && direct > 0) {
            notices.add(
                    Notice.note("sun-is-down", "directWPerM2", "The sun is down; its direct light was left out.", SUN));
            direct = 0;
        }
        if (input.dewPointC() > input.airTemperatureC()) {
            throw Refused.of(
                    "dewPointC",
                    Double.toString(input.dewPointC()),
                    "The dew point, " + input.dewPointC() + " °C, is above the air temperature, "
                            + input.airTemperatureC() + " °C.",
                    SKY);
        }
        double global = input.diffuseWPerM2() + direct * Math.max(0, sun.cosZenith());
        double above = SolarRadiation.extraterrestrialNormalWPerM2(date.getDayOfYear());
        if (global > above * Math.max(0, sun.cosZenith()) + MISFIT_W_PER_M2) {
            notices.add(Notice.advice(
                    "more-than-above-the-air",
                    "diffuseWPerM2",
                    "Direct and diffuse light add up to more than reaches the top of the air at this moment; clouds beside"
                            + " the sun can do that for minutes, not for an hour.",
                    TILTED));
        }
        TiltedSurface surface =
                new TiltedSurface(input.tiltDeg(), input.facingDeg(), input.albedoFraction(), input.skyModel());
        Irradiance light = surface.irradiance(
                sun,
                new SkyLight(
                        direct,
                        input.diffuseWPerM2(),
                        Math.min(90, sun.zenithDeg()),
                        above,
                        SolarRadiation.airMass(sun.elevationDeg())),
                global);
        double skyC = SkyTemperature.ofEmissivityC(
                SkyTemperature.emissivity(input.dewPointC(), input.cloudFraction()), input.airTemperatureC());
        double loss = EquivalentTemperature.skyLossWPerM2(
                input.airTemperatureC(), skyC, input.emissivityFraction(), input.skyViewFraction());
        return new Result(
                sun.zenithDeg(),
                sun.azimuthDeg(),
                sun.cosIncidence(input.tiltDeg(), input.facingDeg()),
                light.beamWPerM2(),
                light.skyWPerM2(),
                light.groundWPerM2(),
                light.totalWPerM2(),
                skyC,
                EquivalentTemperature.equivalentC(
                        input.airTemperatureC(),
                        input.absorptanceFraction() * light.totalWPerM2(),
                        loss,
                        input.filmWPerM2K()),
                notices);
    }

    private static LocalDate date(Input input) {
        try {
            return LocalDate.of(input.yearCount(), input.monthCount(), input.dayCount());
        } catch (DateTimeException e) {
            throw Refused.of(
                    "dayCount",
                    Integer.toString(input.dayCount()),
                    "There is no day " + input.dayCount() + " in month " + input.monthCount() + " of "
                            + input.yearCount() + ".",
                    SUN);
        }
    }
}
