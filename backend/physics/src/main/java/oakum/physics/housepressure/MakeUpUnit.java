package oakum.physics.housepressure;

import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import oakum.physics.duct.DuctSurface;
import org.jspecify.annotations.Nullable;

/** A fan that brings air in when a device that names it runs. */
public record MakeUpUnit(
        @Entry(label = "Short id", maxLength = 40, help = "Letters, digits, - and _; unique in the house.")
        String id,

        @Entry(label = "Name", maxLength = 80) String label,

        @Quantity(
                label = "Airflow",
                symbol = "Qmu",
                unit = Unit.CUBIC_METRE_PER_SECOND,
                min = 0,
                max = 2,
                limitSource = InputRange.PLAUSIBLE)
        double airflowM3PerS,

        @Entry(label = "Fan sits", help = "Decides at which temperature its flow counts, where each flow has its own.")
        FanPlace fanPlace,

        @Quantity(
                label = "Delivered temperature wanted",
                symbol = "Tsup",
                unit = Unit.CELSIUS,
                min = -60,
                max = 45,
                limitSource = InputRange.PLAUSIBLE,
                help = "Outdoor temperature where it is not heated.")
        double supplyTemperatureC,

        @Quantity(
                label = "Heater rating",
                symbol = "Pr",
                unit = Unit.ELECTRIC_WATT,
                min = 0,
                max = 100000,
                limitSource = InputRange.PLAUSIBLE,
                help = "Empty where the heater is not chosen yet.")
        @Nullable
        Double heaterRatingW,

        @Quantity(
                label = "Fan power",
                unit = Unit.ELECTRIC_WATT,
                min = 0,
                max = 5000,
                limitSource = InputRange.PLAUSIBLE,
                help = "Added to the current; empty where it has its own circuit.")
        @Nullable
        Double fanPowerW,

        @Quantity(
                label = "Voltage",
                symbol = "U",
                unit = Unit.VOLT,
                min = 24,
                max = 690,
                limitSource = InputRange.PLAUSIBLE,
                help = "Empty where the heat does not come from electricity.")
        @Nullable
        Double voltageV,

        @Entry(label = "Supply") Phases phases,

        @Quantity(
                label = "Circuit",
                symbol = "Ic",
                unit = Unit.AMPERE,
                min = 1,
                max = 400,
                limitSource = InputRange.PLAUSIBLE)
        @Nullable
        Double circuitA,

        @Quantity(
                label = "Circuit must carry the current times",
                symbol = "kc",
                unit = Unit.ONE,
                min = 1,
                max = 2,
                limitSource = InputRange.PLAUSIBLE,
                help = "1.25 where the electrical code counts fixed heating as a continuous load.")
        double circuitFactor,

        @Quantity(
                label = "Duct diameter",
                symbol = "D",
                unit = Unit.SMALL_METRE,
                min = 0.02,
                max = 1,
                limitSource = InputRange.PLAUSIBLE)
        @Nullable
        Double ductDiameterM,

        @Quantity(
                label = "Duct length, with fittings counted in duct",
                symbol = "L",
                unit = Unit.METRE,
                min = 0,
                max = 200,
                limitSource = InputRange.PLAUSIBLE)
        @Nullable
        Double ductLengthM,

        @Nullable @Entry(label = "Duct surface") DuctSurface ductSurface,

        @Quantity(
                label = "Greatest velocity wanted in the duct",
                symbol = "vlim",
                unit = Unit.METRE_PER_SECOND,
                min = 0.1,
                max = 30,
                limitSource = InputRange.PLAUSIBLE,
                help = "A firm rule or the sound design; empty where none is set.")
        @Nullable
        Double ductVelocityLimitMPerS,

        @Quantity(
                label = "Outlet, gross area",
                symbol = "Ag",
                unit = Unit.SMALL_SQUARE_METRE,
                min = 0.0005,
                max = 2,
                limitSource = InputRange.PLAUSIBLE)
        @Nullable
        Double outletAreaM2,

        @Quantity(
                label = "Outlet, free part of the area",
                symbol = "φ",
                unit = Unit.FRACTION,
                min = 0.05,
                max = 1,
                limitSource = InputRange.PLAUSIBLE)
        @Nullable
        Double outletFreeFraction,

        @Quantity(
                label = "House air it mixes with",
                symbol = "Qmix",
                unit = Unit.CUBIC_METRE_PER_SECOND,
                min = 0,
                max = 5,
                limitSource = InputRange.PLAUSIBLE,
                help = "Return air of the air handler, where the make-up air is delivered into it.")
        @Nullable
        Double mixesWithM3PerS,

        @Quantity(
                label = "Open signal comes within",
                symbol = "tp",
                unit = Unit.SECOND,
                min = 0,
                max = 600,
                limitSource = InputRange.PLAUSIBLE,
                help = "After this time without the damper's open signal the interlock acts.")
        @Nullable
        Double openSignalWithinS) {}
