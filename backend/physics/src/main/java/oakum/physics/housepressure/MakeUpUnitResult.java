package oakum.physics.housepressure;

import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Verdict;
import org.jspecify.annotations.Nullable;

/** What one make-up unit needs and delivers. */
public record MakeUpUnitResult(
        @Entry(label = "Id") String id,
        @Entry(label = "Name") String label,

        @Quantity(label = "Mass flow", symbol = "ṁ", unit = Unit.KILOGRAM_PER_SECOND, step = 1e-4)
        double massFlowKgPerS,

        @Quantity(
                label = "Part of the exhaust it follows",
                unit = Unit.FRACTION,
                step = 0.001,
                help = "By mass; 0.8 to 1.0 is usual.")
        @Nullable
        Double matchFraction,

        @Quantity(label = "Heater power needed", symbol = "P", unit = Unit.ELECTRIC_WATT, step = 10)
        double heaterPowerW,

        @Nullable @Entry(label = "Heater") Verdict heaterVerdict,

        @Quantity(label = "Delivered temperature", unit = Unit.CELSIUS, step = 0.1)
        double deliveredTemperatureC,

        @Quantity(label = "Current", symbol = "I", unit = Unit.AMPERE, step = 0.1) @Nullable
        Double currentA,

        @Nullable @Entry(label = "Circuit") Verdict circuitVerdict,

        @Quantity(label = "Velocity in the duct", symbol = "v", unit = Unit.METRE_PER_SECOND, step = 0.01) @Nullable
        Double ductVelocityMPerS,

        @Nullable @Entry(label = "Duct velocity") Verdict ductVerdict,

        @Quantity(label = "Pressure lost in the duct", unit = Unit.PASCAL, step = 0.1) @Nullable
        Double ductDropPa,

        @Quantity(label = "Velocity at the outlet", unit = Unit.METRE_PER_SECOND, step = 0.01) @Nullable
        Double outletVelocityMPerS,

        @Quantity(label = "Mixed temperature", symbol = "Tmix", unit = Unit.CELSIUS, step = 0.1) @Nullable
        Double mixedTemperatureC,

        @Quantity(label = "Mixed temperature with the heater off", unit = Unit.CELSIUS, step = 0.1) @Nullable
        Double mixedUnheatedTemperatureC,

        @Nullable @Entry(label = "Open signal in time") Verdict openSignalVerdict) {}
