package oakum.physics.housepressure;

import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/** One thing that takes air out of the house. */
public record ExhaustDevice(
        @Entry(label = "Short id", maxLength = 40, help = "Letters, digits, - and _; unique in the house.")
        String id,

        @Entry(label = "Name", maxLength = 80) String label,
        @Entry(label = "Kind") DeviceKind kind,

        @Quantity(
                label = "Airflow, rated",
                symbol = "Qmax",
                unit = Unit.CUBIC_METRE_PER_SECOND,
                min = 0,
                max = 2,
                limitSource = InputRange.PLAUSIBLE,
                help = "What the data sheet says it moves at full speed; the worst case for house pressure.")
        double airflowM3PerS,

        @Entry(label = "Runs", help = "What runs only sometimes is tried on and off in every combination.")
        Running running,

        @Nullable
        @Entry(
                label = "Make-up air that starts with it",
                maxLength = 40,
                help = "Id of a make-up unit or of an opening with a motor damper; empty where none follows.")
        String makeUp,

        @Quantity(
                label = "Fan pressure at shut-off",
                symbol = "pmax",
                unit = Unit.PASCAL,
                min = 1,
                max = 3000,
                limitSource = InputRange.PLAUSIBLE,
                help = "Pressure of the fan at no flow; empty where its curve is not known: then its flow is fixed.")
        @Nullable
        Double shutOffPa,

        @Quantity(
                label = "Duct loss at rated flow",
                symbol = "pd",
                unit = Unit.PASCAL,
                min = 0,
                max = 3000,
                limitSource = InputRange.PLAUSIBLE,
                help = "What its duct and cap lose at the rated flow; grows with the square of the flow.")
        @Nullable
        Double ductDropPa) {}
