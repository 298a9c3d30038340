package oakum.physics.housepressure;

import java.util.List;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/** Everything that sets the pressure of one house while its exhaust runs. */
public record HousePressureInput(
        @Quantity(
                label = "Envelope flow at 50 Pa",
                symbol = "Q50",
                unit = Unit.CUBIC_METRE_PER_SECOND,
                min = 0.001,
                max = 20,
                limitSource = InputRange.PLAUSIBLE,
                help = "From the tightness test, or the target until there is one.")
        double q50M3PerS,

        @Quantity(
                label = "Exponent",
                symbol = "n",
                unit = Unit.ONE,
                min = 0.5,
                max = 1,
                limitSource = InputRange.EXPONENT,
                help = "From the tightness test; 0.65 until there is one.")
        double exponent,

        @Quantity(
                label = "Uncertainty of the envelope flow",
                symbol = "u",
                unit = Unit.FRACTION,
                min = 0,
                max = 0.5,
                limitSource = InputRange.PLAUSIBLE,
                help = "Half its 95 % interval as a part of it; empty counts as none.")
        @Nullable
        Double q50UncertaintyFraction,

        @Quantity(
                label = "Uncertainty of the exponent",
                symbol = "un",
                unit = Unit.ONE,
                min = 0,
                max = 0.3,
                limitSource = InputRange.PLAUSIBLE,
                help =
                        "Half its 95 % interval, as the tightness test gives it; empty counts as none. Far below 50 Pa it"
                                + " weighs more than the uncertainty of the flow.")
        @Nullable
        Double exponentUncertainty,

        @Quantity(
                label = "Altitude",
                symbol = "z",
                unit = Unit.METRE,
                min = -500,
                max = 5000,
                limitSource = InputRange.PLAUSIBLE)
        double altitudeM,

        @Quantity(
                label = "Indoors",
                symbol = "Tin",
                unit = Unit.CELSIUS,
                min = 0,
                max = 40,
                limitSource = InputRange.PLAUSIBLE)
        double indoorTemperatureC,

        @Quantity(
                label = "Design outdoor temperature",
                symbol = "Tout",
                unit = Unit.CELSIUS,
                min = -60,
                max = 45,
                limitSource = InputRange.PLAUSIBLE)
        double outdoorTemperatureC,

        @Entry(
                label = "Flows count as",
                help = "Only mass is conserved: say at which density the entered flows count. Where each has its own,"
                        + " the envelope flow counts at the reference of the test and fan pressures in standard air.")
        FlowBasis flowBasis,

        @Quantity(
                label = "Temperature at which the flows count",
                symbol = "Tref",
                unit = Unit.CELSIUS,
                min = -60,
                max = 45,
                limitSource = InputRange.PLAUSIBLE,
                help = "Only for air of this place; the delivered temperature of the make-up air is a usual choice.")
        @Nullable
        Double flowTemperatureC,

        @Entry(label = "Fuel-burning appliances in the house")
        Appliances appliances,

        @Entry(label = "Limit") PressureLimit limit,

        @Entry(label = "Exhaust devices", minRows = 0, maxRows = 8)
        List<ExhaustDevice> devices,

        @Nullable @Entry(label = "Ventilator", help = "Its supply and exhaust, where they may differ.")
        Ventilator ventilator,

        @Entry(label = "Passive openings", maxRows = 6) List<PassiveOpening> openings,

        @Entry(label = "Make-up units", maxRows = 4) List<MakeUpUnit> makeUpUnits,

        @Nullable @Entry(label = "Door", help = "A door that must still open under the house pressure.")
        Door door) {

    public HousePressureInput {
        devices = List.copyOf(devices);
        openings = List.copyOf(openings);
        makeUpUnits = List.copyOf(makeUpUnits);
    }
}
