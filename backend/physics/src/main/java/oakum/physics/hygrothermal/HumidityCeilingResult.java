package oakum.physics.hygrothermal;

import java.util.List;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/** The indoor humidity that a wall stands, over the temperature outdoors. */
public record HumidityCeilingResult(
        @Entry(label = "In words", maxLength = 1000) String inWords,

        @Entry(label = "Curve", maxRows = 20) List<Point> curve,

        @Quantity(label = "Ceiling at −10 °C outdoors", unit = Unit.FRACTION, step = 0.01, leading = true) @Nullable
        Double atMinusTenFraction,

        @Quantity(label = "Runs", unit = Unit.COUNT) int runCount,

        List<Notice> notices)
        implements HasNotices {

    /** One outdoor temperature. */
    public record Point(
            @Quantity(label = "Outdoors, mean of 24 h", unit = Unit.CELSIUS, step = 1)
            double outdoorC,

            @Quantity(label = "Board that gets wet first", unit = Unit.CELSIUS, step = 0.1)
            double planeC,

            @Quantity(label = "Quick bound, no storage", unit = Unit.FRACTION, step = 0.01)
            double quickFraction,

            @Quantity(label = "Ceiling", unit = Unit.FRACTION, step = 0.01) @Nullable
            Double ceilingFraction) {}
}
