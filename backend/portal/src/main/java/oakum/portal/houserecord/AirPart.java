package oakum.portal.houserecord;

import java.util.List;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import oakum.physics.housepressure.DeviceKind;
import org.jspecify.annotations.Nullable;

/** Everything that moves air: tightness, exhaust, make-up air, ventilation, filters. */
public record AirPart(
        @Entry(label = "Tightness") @Nullable Tightness tightness,
        @Entry(label = "Exhaust", maxRows = 30) List<Exhaust> exhaust,
        @Entry(label = "Make-up air", maxRows = 10) List<MakeUp> makeUp,
        @Entry(label = "Passive openings", maxRows = 20) List<PassiveOpening> passiveOpenings,
        @Entry(label = "Ventilation") @Nullable Ventilation ventilation,
        @Entry(label = "Air handler") @Nullable AirHandler airHandler,
        @Entry(label = "Filters", maxRows = 20) List<Filter> filters,
        @Entry(label = "Limits") @Nullable AirLimits limits)
        implements Part {
    public AirPart {
        exhaust = exhaust == null ? List.of() : List.copyOf(exhaust);
        makeUp = makeUp == null ? List.of() : List.copyOf(makeUp);
        passiveOpenings = passiveOpenings == null ? List.of() : List.copyOf(passiveOpenings);
        filters = filters == null ? List.of() : List.copyOf(filters);
    }

    /** How tight the house is to be or is. */
    public record Tightness(
            @Quantity(
                    label = "Tightness target at 50 Pa",
                    symbol = "n50",
                    unit = Unit.PER_HOUR,
                    min = 0.05,
                    max = 20,
                    limitSource = PlausibleRange.SOURCE)
            double targetAch50PerH,

            @Entry(label = "Counted on") VolumeBasis volumeBasis,

            @Quantity(
                    label = "Envelope flow at 50 Pa",
                    symbol = "Q50",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0.001,
                    max = 20,
                    limitSource = PlausibleRange.SOURCE,
                    help = "Target until a test measured it.")
            double q50M3PerS,

            @Quantity(
                    label = "Exponent",
                    symbol = "n",
                    unit = Unit.ONE,
                    min = 0.5,
                    max = 1,
                    limitSource = PlausibleRange.SOURCE,
                    help = "0.65 until a test measured it.")
            double exponent,

            @Entry(label = "Measured on", help = "Date of the test; empty while it is the target.", maxLength = 10)
            @Nullable
            String measuredOn) {}

    /** Something that takes air out. */
    public record Exhaust(
            @Entry(label = "Short name", help = "Names the row in paths; letters and digits.", maxLength = 40)
            String id,

            @Entry(label = "Name") String label,
            @Entry(label = "Kind") DeviceKind kind,

            @Quantity(
                    label = "Rated flow",
                    symbol = "Q",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    max = 2,
                    limitSource = PlausibleRange.SOURCE)
            double ratedFlowM3PerS,

            @Quantity(
                    label = "Shut-off pressure of the fan",
                    unit = Unit.PASCAL,
                    min = 20,
                    max = 3000,
                    limitSource = PlausibleRange.SOURCE,
                    help = "Where its curve is known; empty takes the rated flow as fixed.")
            @Nullable
            Double shutOffPressurePa,

            @Entry(label = "Runs all the time") boolean continuous,

            @Entry(label = "Its make-up unit", help = "Short name of the unit that follows it.", maxLength = 40)
            @Nullable
            String makeUpId) {}

    /** Something that brings in what exhaust takes out. */
    public record MakeUp(
            @Entry(label = "Short name", help = "Names the row in paths; letters and digits.", maxLength = 40)
            String id,

            @Entry(label = "Name") String label,

            @Quantity(
                    label = "Flow",
                    symbol = "Q",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    max = 2,
                    limitSource = PlausibleRange.SOURCE)
            double flowM3PerS,

            @Quantity(
                    label = "Duct diameter",
                    symbol = "d",
                    unit = Unit.SMALL_METRE,
                    min = 0.05,
                    max = 1,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double ductDiameterM,

            @Quantity(
                    label = "Heater, rated",
                    unit = Unit.ELECTRIC_WATT,
                    min = 0,
                    max = 50000,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double heaterRatedW,

            @Quantity(
                    label = "Delivered at",
                    unit = Unit.CELSIUS,
                    min = -40,
                    max = 40,
                    limitSource = PlausibleRange.SOURCE)
            double supplyC,

            @Quantity(label = "Voltage", unit = Unit.VOLT, min = 12, max = 1000, limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double voltageV,

            @Quantity(
                    label = "Circuit, rated",
                    unit = Unit.AMPERE,
                    min = 1,
                    max = 400,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double circuitRatedA,

            @Quantity(
                    label = "Outlet, gross area",
                    unit = Unit.SMALL_SQUARE_METRE,
                    min = 0.0005,
                    max = 5,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double outletGrossAreaM2,

            @Quantity(
                    label = "Outlet, free share",
                    unit = Unit.FRACTION,
                    min = 0.05,
                    max = 1,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double outletFreeFraction,

            @Quantity(
                    label = "Exhaust stops without an open signal after",
                    unit = Unit.SECOND,
                    min = 0,
                    max = 3600,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double proofTimeS,

            @Entry(label = "Follows", help = "Short name of the exhaust device that it follows.", maxLength = 40)
            @Nullable
            String followsExhaustId) {}

    /** An opening without a fan. */
    public record PassiveOpening(
            @Entry(label = "Short name", help = "Names the row in paths; letters and digits.", maxLength = 40)
            String id,

            @Entry(label = "Name") String label,

            @Quantity(
                    label = "Diameter",
                    symbol = "d",
                    unit = Unit.SMALL_METRE,
                    min = 0.01,
                    max = 1,
                    limitSource = PlausibleRange.SOURCE)
            double diameterM,

            @Quantity(
                    label = "Discharge coefficient",
                    symbol = "Cd",
                    unit = Unit.ONE,
                    min = 0.1,
                    max = 1,
                    limitSource = PlausibleRange.SOURCE)
            double dischargeCoefficient) {}

    /** Supply and exhaust of the ventilator. */
    public record Ventilation(
            @Quantity(
                    label = "Supply",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    max = 1,
                    limitSource = PlausibleRange.SOURCE)
            double supplyM3PerS,

            @Quantity(
                    label = "Exhaust",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    max = 1,
                    limitSource = PlausibleRange.SOURCE)
            double exhaustM3PerS,

            @Quantity(
                    label = "Required",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    max = 1,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double requiredM3PerS,

            @Quantity(
                    label = "Latent recovery",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = PlausibleRange.SOURCE)
            double latentRecoveryFraction,

            @Quantity(
                    label = "Sensible recovery",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = PlausibleRange.SOURCE)
            double sensibleRecoveryFraction) {}

    /** The air handler and the pressure that it can give. */
    public record AirHandler(
            @Quantity(
                    label = "High flow",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0.01,
                    max = 3,
                    limitSource = PlausibleRange.SOURCE)
            double highFlowM3PerS,

            @Quantity(
                    label = "Continuous low flow",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    max = 3,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double lowFlowM3PerS,

            @Quantity(
                    label = "Greatest external static",
                    unit = Unit.PASCAL,
                    min = 0,
                    max = 500,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double staticLimitPa,

            @Quantity(
                    label = "Static without the filter",
                    unit = Unit.PASCAL,
                    min = 0,
                    max = 500,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double otherStaticPa,

            @Quantity(
                    label = "Cooling capacity",
                    unit = Unit.WATT,
                    min = 0,
                    max = 50000,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double coolingCapacityW,

            @Quantity(
                    label = "Fan and motor efficiency",
                    unit = Unit.FRACTION,
                    min = 0.01,
                    max = 1,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double fanEfficiencyFraction) {}

    /** A bank of equal filters. */
    public record Filter(
            @Entry(label = "Short name", help = "Names the row in paths; letters and digits.", maxLength = 40)
            String id,

            @Entry(label = "Name") String label,

            @Quantity(
                    label = "Width",
                    unit = Unit.SMALL_METRE,
                    min = 0.05,
                    max = 2,
                    limitSource = PlausibleRange.SOURCE)
            double widthM,

            @Quantity(
                    label = "Height",
                    unit = Unit.SMALL_METRE,
                    min = 0.05,
                    max = 2,
                    limitSource = PlausibleRange.SOURCE)
            double heightM,

            @Quantity(
                    label = "Depth",
                    unit = Unit.SMALL_METRE,
                    min = 0.005,
                    max = 0.6,
                    limitSource = PlausibleRange.SOURCE)
            double depthM,

            @Quantity(
                    label = "Filters side by side",
                    unit = Unit.COUNT,
                    min = 1,
                    max = 20,
                    limitSource = PlausibleRange.SOURCE)
            int count,

            @Entry(label = "Grade", maxLength = 40) String grade,

            @Entry(
                    label = "Edition of the grade",
                    help = "Grades of different editions are not the same.",
                    maxLength = 40)
            String gradeEdition,

            @Quantity(
                    label = "Clean drop, part with velocity",
                    unit = Unit.PASCAL_PER_VELOCITY,
                    min = 0,
                    max = 1000,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double curveLinearPaSPerM,

            @Quantity(
                    label = "Clean drop, part with velocity squared",
                    unit = Unit.PASCAL_PER_VELOCITY_SQUARED,
                    min = 0,
                    max = 1000,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double curveQuadraticPaS2PerM2) {}

    /** What the firm or the place demands of the air. */
    public record AirLimits(
            @Quantity(
                    label = "House pressure with make-up air",
                    unit = Unit.HOUSE_PASCAL,
                    min = 0.5,
                    max = 100,
                    limitSource = PlausibleRange.SOURCE)
            double housePressurePa,

            @Quantity(
                    label = "House pressure when make-up air fails",
                    unit = Unit.HOUSE_PASCAL,
                    min = 0.5,
                    max = 200,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double failedMakeUpPressurePa,

            @Quantity(
                    label = "Face velocity at a filter",
                    unit = Unit.METRE_PER_SECOND,
                    min = 0.1,
                    max = 5,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double faceVelocityMPerS,

            @Quantity(
                    label = "Clean drop at a filter",
                    unit = Unit.PASCAL,
                    min = 1,
                    max = 300,
                    limitSource = PlausibleRange.SOURCE)
            @Nullable
            Double cleanDropPa,

            @Entry(label = "Source of the limits") String source) {}
}
