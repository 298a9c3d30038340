package oakum.physics.rainscreen;

import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;

/** A cavity behind a cladding, for each metre of its width. */
public record Cavity(
        @Quantity(
                label = "Clear depth of the cavity",
                symbol = "d",
                unit = Unit.SMALL_METRE,
                min = 0.002,
                max = 0.3,
                limitSource = Citations.PLAUSIBLE)
        double depthM,

        @Quantity(
                label = "Height from the bottom to the top opening",
                symbol = "h",
                unit = Unit.METRE,
                min = 0.2,
                max = 30,
                limitSource = Citations.PLAUSIBLE)
        double heightM,

        @Quantity(
                label = "Share of the cavity that is free of battens and brackets",
                symbol = "γ",
                unit = Unit.FRACTION,
                min = 0.05,
                max = 1,
                limitSource = Citations.PLAUSIBLE,
                advisedMin = 0.8,
                advisedMax = 1,
                advisedSource = "0.8 to 1 is usual (from memory)")
        double freeFraction,

        @Quantity(
                label = "Bottom opening",
                unit = Unit.SQUARE_METRE_PER_METRE,
                min = 0,
                max = 0.3,
                limitSource = Citations.PLAUSIBLE,
                help = "Before mesh: a slot of 10 mm is 10 000 mm²/m.")
        double bottomGrossM2PerM,

        @Quantity(
                label = "Share of the bottom opening that its mesh leaves free",
                unit = Unit.FRACTION,
                min = 0,
                max = 1,
                limitSource = "a share of the opening",
                help = "1 without mesh; 0.4 to 0.6 for an untested mesh.")
        double bottomFreeFraction,

        @Quantity(
                label = "Top opening",
                unit = Unit.SQUARE_METRE_PER_METRE,
                min = 0,
                max = 0.3,
                limitSource = Citations.PLAUSIBLE,
                help = "Before mesh; 0 where trim shuts it.")
        double topGrossM2PerM,

        @Quantity(
                label = "Share of the top opening that its mesh leaves free",
                unit = Unit.FRACTION,
                min = 0,
                max = 1,
                limitSource = "a share of the opening",
                help = "1 without mesh; 0.4 to 0.6 for an untested mesh.")
        double topFreeFraction,

        @Quantity(
                label = "Discharge coefficient of the openings",
                symbol = "Cd",
                unit = Unit.ONE,
                min = 0.2,
                max = 1,
                limitSource = Citations.PLAUSIBLE,
                advisedMin = 0.6,
                advisedMax = 0.63,
                advisedSource = "sharp-edged openings (from memory)")
        double dischargeCoefficient) {

    /** Free area of the bottom opening, m² per metre of width. */
    public double bottomFreeM2PerM() {
        return bottomGrossM2PerM * bottomFreeFraction;
    }

    /** Free area of the top opening, m² per metre of width. */
    public double topFreeM2PerM() {
        return topGrossM2PerM * topFreeFraction;
    }

    /** The smaller of the two free areas, which rules the class of ventilation. */
    public double leastFreeM2PerM() {
        return Math.min(bottomFreeM2PerM(), topFreeM2PerM());
    }

    /** Volume behind one square metre of cladding is the depth: air change of a flow per metre of width, 1/h. */
    public double airChangePerH(double airflowM3PerSM) {
        return 3600 * airflowM3PerSM / (depthM * heightM);
    }
}
