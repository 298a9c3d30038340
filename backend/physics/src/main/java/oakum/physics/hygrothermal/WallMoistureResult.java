package oakum.physics.hygrothermal;

import java.util.List;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Verdict;
import org.jspecify.annotations.Nullable;

/** What became of a wall's water. */
public record WallMoistureResult(
        @Entry(label = "In words", maxLength = 1000) String inWords,
        @Entry(label = "Whole wall") Verdict verdict,

        @Quantity(
                label = "Wettest wood, last year",
                unit = Unit.FRACTION,
                step = 0.001,
                leading = true,
                limitField = "woodLimitFraction")
        @Nullable
        Double woodPeakFraction,

        @Quantity(label = "Most water in wood", unit = Unit.FRACTION)
        double woodLimitFraction,

        @Quantity(
                label = "Greatest mould index",
                unit = Unit.ONE,
                step = 0.01,
                leading = true,
                limitField = "mouldLimit")
        @Nullable
        Double mouldIndex,

        @Quantity(label = "Limit of the mould index", unit = Unit.ONE)
        double mouldLimit,

        @Quantity(label = "Frost in wet pores", unit = Unit.HOUR, step = 1)
        double frostH,

        @Quantity(label = "Years to balance", unit = Unit.COUNT) @Nullable
        Integer yearsToBalanceCount,

        @Entry(label = "Layers, from inside", maxRows = 60) List<LayerWater> layers,

        @Quantity(label = "Rain that ran off", unit = Unit.KILOGRAM_PER_SQUARE_METRE, step = 0.1)
        double runOffKgPerM2,

        @Quantity(label = "Water unaccounted for, of all that passed", unit = Unit.ONE)
        double waterError,

        @Quantity(label = "Heat unaccounted for, of all that passed", unit = Unit.ONE)
        double heatError,

        List<Notice> notices)
        implements HasNotices {

    /** One layer. Shares are water over dry mass. */
    public record LayerWater(
            @Entry(label = "Short name") String id,
            @Entry(label = "Layer") String label,

            @Quantity(label = "Peak, last year", unit = Unit.FRACTION, step = 0.001) @Nullable
            Double peakFraction,

            @Entry(label = "When") @Nullable String peakOn,

            @Quantity(label = "Peak of its wettest 5 mm, last year", unit = Unit.FRACTION, step = 0.001) @Nullable
            Double worstPeakFraction,

            @Quantity(label = "Peak, all years", unit = Unit.FRACTION, step = 0.001) @Nullable
            Double everPeakFraction,

            @Quantity(label = "Driest, last year", unit = Unit.FRACTION, step = 0.001) @Nullable
            Double leastFraction,

            @Quantity(label = "Limit", unit = Unit.FRACTION) @Nullable
            Double limitFraction,

            @Quantity(label = "Room left to the limit", unit = Unit.FRACTION, step = 0.001) @Nullable
            Double roomLeftFraction,

            @Entry(label = "Dries towards") @Nullable String driesTowards,

            @Quantity(label = "Share that dries inward", unit = Unit.FRACTION, step = 0.01) @Nullable
            Double inwardFraction,

            @Quantity(label = "Greatest mould index on its faces", unit = Unit.ONE, step = 0.01) @Nullable
            Double mouldIndex,

            @Quantity(label = "Greatest 30-day humidity on its faces", unit = Unit.FRACTION, step = 0.001) @Nullable
            Double thirtyDayFraction,

            @Quantity(label = "Days wetter than the limit of wood", unit = Unit.DAY, step = 0.1) @Nullable
            Double overLimitD,

            @Quantity(label = "Mass lost to decay", unit = Unit.FRACTION, step = 0.0001) @Nullable
            Double decayFraction,

            @Entry(label = "Answer") @Nullable Verdict verdict) {}
}
