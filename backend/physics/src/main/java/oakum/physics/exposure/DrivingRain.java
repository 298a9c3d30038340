package oakum.physics.exposure;

import java.util.ArrayList;
import java.util.List;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Caution;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;

/** Rain that wind drives against a wall in an hour, by two methods side by side, and what of it comes behind the cladding. */
public final class DrivingRain {
    public static final Calculation<Input, Result> CALCULATION = Calculation.declare(
                    "driving-rain", "1.0", "Rain driven against a wall", Input.class, Result.class)
            .purpose(
                    "Gives the rain that one hour of wind and rain drives against a wall, by two methods, and the share"
                            + " of it that comes behind the cladding.")
            .equation("I = 2/9 · v · r^(8/9) · max(0, cos θ)", IsoRain.SOURCE)
            .equation("I_W = I · C_R · C_T · O · W, C_R = K_R · ln(max(z, z_min)/z_0)", IsoRain.SOURCE)
            .equation("r_bv = F_E · F_D · 0.2 · v · max(0, cos θ) · r", AshraeRain.SOURCE)
            .equation("behind the cladding: share · rain on the wall", AshraeRain.SOURCE)
            .equation("below 0 °C there is no driving rain", RainOnWall.BELOW_FREEZING)
            .source(IsoRain.SOURCE)
            .source(AshraeRain.SOURCE)
            .caution(new Caution(
                    "Water",
                    "Gutters that overflow, missing drips and hoses wet a wall far more than driving rain does. The"
                            + " bottom edge must drain whatever this number says."))
            .validation("Computed a second time by independent code from the printed equations; the form of the second"
                    + " method was seen in an open digest. No worked example of the standards was found.")
            .by(DrivingRain::compute);

    private static final double FAR_APART = 2;

    private DrivingRain() {}

    /** An hour of wind and rain, and the wall. */
    public record Input(
            @Quantity(
                    label = "Wind at 10 m above open ground",
                    symbol = "v",
                    unit = Unit.WIND_METRE_PER_SECOND,
                    min = 0,
                    max = 75,
                    limitSource = InputRange.WEATHER)
            double windMPerS,

            @Quantity(
                    label = "Rain on level ground",
                    symbol = "r",
                    unit = Unit.RAIN_PER_HOUR,
                    min = 0,
                    max = 400,
                    limitSource = InputRange.WEATHER)
            double rainKgPerM2H,

            @Quantity(
                    label = "Air temperature",
                    unit = Unit.CELSIUS,
                    min = -70,
                    max = 60,
                    limitSource = InputRange.WEATHER)
            double temperatureC,

            @Quantity(
                    label = "Wind against the wall",
                    symbol = "θ",
                    unit = Unit.DEGREE,
                    min = -180,
                    max = 180,
                    limitSource = InputRange.ANGLE,
                    help = "Between where the wind comes from and straight at the wall: 0 at the wall, 90 along it.")
            double windAngleDeg,

            @Entry(label = "Land upwind") IsoRain.Land land,

            @Quantity(
                    label = "Height of the place on the wall",
                    symbol = "z",
                    unit = Unit.METRE,
                    min = 0,
                    max = 30,
                    limitSource = InputRange.HOUSE)
            double placeHeightM,

            @Quantity(
                    label = "Topography",
                    symbol = "C_T",
                    unit = Unit.ONE,
                    min = 0.5,
                    max = 2,
                    limitSource = "ISO 15927-3, from memory: 1 on level ground, more on hills and cliffs")
            double topography,

            @Quantity(
                    label = "Obstruction",
                    symbol = "O",
                    unit = Unit.ONE,
                    min = 0.2,
                    max = 1,
                    limitSource = "ISO 15927-3, from memory: 0.2 close behind another building, 1 in the open")
            double obstruction,

            @Quantity(
                    label = "Wall factor",
                    symbol = "W",
                    unit = Unit.ONE,
                    min = 0.1,
                    max = 1,
                    limitSource = "ISO 15927-3, from memory: 0.3 to 0.5 for two storeys")
            double wallFactor,

            @Entry(label = "Exposure of the house") AshraeRain.Site site,

            @Quantity(
                    label = "Height of the building",
                    unit = Unit.METRE,
                    min = 2,
                    max = 30,
                    limitSource = "the table of exposure factors ends at 30 m")
            double buildingHeightM,

            @Entry(label = "Above the wall") AshraeRain.Deposition deposition,

            @Quantity(
                    label = "Share that comes behind the cladding",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = InputRange.SHARE,
                    help = "ASHRAE 160 takes 1 % unless the wall was tested; open joints let in more.")
            double enteringFraction) {}

    /** Rain on the wall. */
    public record Result(
            @Quantity(label = "In the open, facing the wall", symbol = "I", unit = Unit.RAIN_PER_HOUR, step = 0.001)
            double freeFieldKgPerM2H,

            @Quantity(label = "Roughness", symbol = "C_R", unit = Unit.ONE, step = 0.0001)
            double roughness,

            @Quantity(
                    label = "On the wall, ISO 15927-3",
                    symbol = "I_W",
                    unit = Unit.RAIN_PER_HOUR,
                    step = 0.001,
                    leading = true)
            double isoWallKgPerM2H,

            @Quantity(
                    label = "On the wall, ASHRAE 160",
                    symbol = "r_bv",
                    unit = Unit.RAIN_PER_HOUR,
                    step = 0.001,
                    leading = true)
            double ashraeWallKgPerM2H,

            @Quantity(
                    label = "Behind the cladding, of the higher",
                    unit = Unit.RAIN_PER_HOUR,
                    step = 0.0001,
                    leading = true)
            double enteringKgPerM2H,

            List<Notice> notices)
            implements HasNotices {}

    private static Result compute(Input input) {
        double roughness = input.land().roughness(input.placeHeightM());
        IsoRain iso = new IsoRain(roughness, input.topography(), input.obstruction(), input.wallFactor());
        AshraeRain ashrae = new AshraeRain(
                input.site().factor(input.buildingHeightM()), input.deposition().factor());
        double liquid = input.temperatureC() < 0 ? 0 : input.rainKgPerM2H();
        double onIso = iso.liquidKgPerM2H(input.windMPerS(), input.windAngleDeg(), liquid);
        double onAshrae = ashrae.liquidKgPerM2H(input.windMPerS(), input.windAngleDeg(), liquid);

        List<Notice> notices = new ArrayList<>();
        if (liquid < input.rainKgPerM2H()) {
            notices.add(Notice.note(
                    "snow-is-no-driving-rain",
                    "temperatureC",
                    "Below 0 °C precipitation is taken as snow, which does not wet a wall.",
                    RainOnWall.BELOW_FREEZING));
        }
        if (Math.max(onIso, onAshrae) > FAR_APART * Math.min(onIso, onAshrae)) {
            notices.add(Notice.note(
                    "methods-differ",
                    "",
                    "The two methods differ by more than a factor of two; take the higher where nothing was measured.",
                    AshraeRain.SOURCE));
        }
        return new Result(
                IsoRain.freeFieldKgPerM2H(input.windMPerS(), input.windAngleDeg(), liquid),
                roughness,
                onIso,
                onAshrae,
                input.enteringFraction() * Math.max(onIso, onAshrae),
                notices);
    }
}
