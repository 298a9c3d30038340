package oakum.physics.hygrothermal;

import java.util.List;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import oakum.physics.envelope.LayerRow;
import oakum.physics.exposure.AirLeak;
import oakum.physics.exposure.AshraeRain;
import org.jspecify.annotations.Nullable;

/** A wall, roof or floor, what surrounds it, and for how long it is followed. */
public record WallMoistureInput(
        @Entry(label = "Layers, from inside", minRows = 1, maxRows = 30)
        List<LayerRow> layers,

        @Entry(label = "Cut") WallCut cut,

        @Quantity(
                label = "Faces",
                symbol = "γ",
                unit = Unit.DEGREE,
                min = 0,
                max = 360,
                limitSource = "clockwise from north",
                help = "0 north, 90 east, 180 south, 270 west. North is the wettest in most walls.")
        double azimuthDeg,

        @Quantity(
                label = "Tilt",
                symbol = "β",
                unit = Unit.DEGREE,
                min = 0,
                max = 180,
                limitSource = "0 level and facing up, 90 upright",
                help = "90 for a wall.")
        double tiltDeg,

        @Quantity(
                label = "Sun taken up by the outer face",
                symbol = "α",
                unit = Unit.FRACTION,
                min = 0,
                max = 1,
                limitSource = "a share",
                help = "0.3 to 0.4 for light colours, 0.7 to 0.85 for dark wood.")
        double absorptanceFraction,

        @Entry(
                label = "Weather",
                help = "Which of the kept years; north-facing walls of a cold year are the usual test.",
                maxLength = 80)
        String weatherHash,

        @Entry(label = "Air inside") IndoorKind indoor,

        @Quantity(
                label = "Indoor temperature",
                symbol = "θ_i",
                unit = Unit.CELSIUS,
                min = 5,
                max = 35,
                limitSource = "lived-in houses (proposed here)",
                help = "Left out: 20 °C. Some of the choices above bring their own.")
        @Nullable
        Double indoorC,

        @Quantity(
                label = "Indoor humidity",
                symbol = "φ_i",
                unit = Unit.FRACTION,
                min = 0.05,
                max = 0.95,
                limitSource = "lived-in houses (proposed here)",
                advisedMax = 0.65,
                advisedSource = "above it mould is to be expected on cold places inside (common practice)",
                help = "Where it is the same all year.")
        @Nullable
        Double indoorHumidityFraction,

        @Entry(label = "Indoor humidity over outdoor temperature", maxRows = 12)
        List<CurvePoint> indoorCurve,

        @Entry(label = "Driving rain", help = "How open the house stands; left out: no rain is counted.")
        AshraeRain.@Nullable Site rainSite,

        @Entry(label = "What stands above the wall", help = "Needed with driving rain.")
        AshraeRain.@Nullable Deposition rainDeposition,

        @Quantity(
                label = "Rain that comes behind the cladding",
                symbol = "f_r",
                unit = Unit.FRACTION,
                min = 0,
                max = 0.2,
                limitSource = "shares seen in tests of leaky walls end far below (proposed here)",
                help = "0.01 is the test of ASHRAE 160; 0 leaves it out.")
        double rainEntryFraction,

        @Entry(
                label = "Layer that rain reaches",
                help = "Short name; on its outer face. Left out: the first solid layer behind the ventilated one.",
                maxLength = 40)
        @Nullable
        String rainLayerId,

        @Entry(label = "Indoor air that leaks into the wall", help = "Left out: none.")
        AirLeak.@Nullable Tightness leakTightness,

        @Quantity(
                label = "Height of the connected indoor air",
                symbol = "h",
                unit = Unit.METRE,
                min = 0,
                max = 30,
                limitSource = "houses (proposed here)",
                help = "Needed with leaking air.")
        @Nullable
        Double leakHeightM,

        @Entry(
                label = "Layer where leaking air cools",
                help =
                        "Short name; on its inner face. Left out: the outermost solid layer inside of the ventilated one.",
                maxLength = 40)
        @Nullable
        String leakLayerId,

        @Quantity(
                label = "Air change of the ventilated layer",
                symbol = "n",
                unit = Unit.PER_HOUR,
                min = 0,
                max = 2000,
                limitSource =
                        "measured cavities: brick 1 to 10, boards on battens 100 to 1000 (Langmans et al. 2016, seen)",
                help = "From the rain-screen calculation.")
        @Nullable
        Double cavityAirChangesPerH,

        @Quantity(
                label = "Humidity of the materials at the start",
                symbol = "φ_0",
                unit = Unit.FRACTION,
                min = 0.2,
                max = 0.99,
                limitSource = "from dry to wet from the rain",
                help = "0.8 where they were kept dry (ASHRAE 160).")
        double startHumidityFraction,

        @Entry(label = "Layers that start otherwise", help = "Built-in moisture.", maxRows = 10)
        List<WetStart> wetStarts,

        @Quantity(
                label = "Most water in wood",
                symbol = "u_max",
                unit = Unit.FRACTION,
                min = 0.1,
                max = 0.3,
                limitSource = "below fibre saturation",
                help = "Of its dry mass. Left out: 0.20.")
        @Nullable
        Double woodLimitFraction,

        @Quantity(
                label = "First month",
                unit = Unit.ONE,
                min = 1,
                max = 12,
                limitSource = "months",
                help = "10 lets the wall go through a winter first.")
        int startMonth,

        @Quantity(label = "Years", unit = Unit.ONE, min = 1, max = 10, limitSource = "time to compute")
        int years) {

    public WallMoistureInput {
        layers = List.copyOf(layers);
        indoorCurve = List.copyOf(indoorCurve);
        wetStarts = List.copyOf(wetStarts);
    }

    /** Humidity inside at one outdoor temperature; straight between the points, level beyond them. */
    public record CurvePoint(
            @Quantity(
                    label = "Outdoors, mean of 24 h",
                    unit = Unit.CELSIUS,
                    min = -60,
                    max = 40,
                    limitSource = "weather on earth")
            double outdoorC,

            @Quantity(
                    label = "Indoor humidity",
                    unit = Unit.FRACTION,
                    min = 0.05,
                    max = 0.95,
                    limitSource = "lived-in houses (proposed here)")
            double humidityFraction) {}

    /** A layer that is wetter or drier than the others at the start. */
    public record WetStart(
            @Entry(label = "Layer", maxLength = 40) String layerId,

            @Quantity(
                    label = "Humidity at the start",
                    unit = Unit.FRACTION,
                    min = 0.2,
                    max = 1,
                    limitSource = "from dry to saturated")
            double humidityFraction) {}
}
