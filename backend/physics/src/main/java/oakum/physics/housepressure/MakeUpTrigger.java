package oakum.physics.housepressure;

import java.util.ArrayList;
import java.util.List;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Caution;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Source;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/** Whether a written rule requires make-up air for one exhaust system; the rule itself is data. */
public final class MakeUpTrigger {
    public static final Calculation<Input, Result> CALCULATION = Calculation.declare(
                    "make-up-trigger", "1.0", "Make-up air required by a rule", Input.class, Result.class)
            .purpose("Says whether a rule, with its edition and place, requires make-up air for one exhaust system; the"
                    + " house pressure decides what the house needs.")
            .equation("required where Q > Qrule and the rule holds for the appliances in the house", Citations.IRC_2018)
            .source(Citations.IRC_2018)
            .source(Source.seen("IRC M1503.4 (2009 to 2015), secondary; ordinance of a Texas city"))
            .caution(Cautions.COMBUSTION)
            .caution(Cautions.GAS)
            .caution(Caution.CODE_AUTHORITY)
            .validation("The four cases that follow from the text of the 2018 rule.")
            .by(MakeUpTrigger::compute);

    private MakeUpTrigger() {}

    /** One exhaust system, one house, one rule. */
    public record Input(
            @Quantity(
                    label = "Exhaust system, rated",
                    symbol = "Q",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    max = 5,
                    limitSource = InputRange.MODEL_CODE)
            double exhaustM3PerS,

            @Entry(label = "Fuel-burning appliances in the house")
            Appliances appliances,

            @Quantity(
                    label = "The rule holds above",
                    symbol = "Qrule",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    max = 5,
                    limitSource = InputRange.MODEL_CODE,
                    help = "400 cfm in the model code; places differ.")
            double thresholdM3PerS,

            @Quantity(
                    label = "Above this instead, where no appliance takes room air",
                    symbol = "Qsealed",
                    unit = Unit.CUBIC_METRE_PER_SECOND,
                    min = 0,
                    max = 5,
                    limitSource = InputRange.MODEL_CODE,
                    help = "Empty where the rule makes no such difference.")
            @Nullable
            Double sealedThresholdM3PerS,

            @Entry(label = "Holds") TriggerScope scope,
            @Entry(label = "Amount required") TriggerAmount amount,
            @Entry(label = "Rule", help = "Its clause.") String rule,
            @Entry(label = "Edition", maxLength = 60) String edition,

            @Nullable @Entry(label = "Place", maxLength = 80, help = "Where it is adopted.")
            String place,

            @Nullable
            @Entry(label = "Confirmed by", maxLength = 80, help = "Who confirmed that it holds for this house.")
            String confirmedBy) {}

    /** What the rule says. */
    public record Result(
            @Entry(label = "Make-up air required by this rule")
            boolean required,

            @Quantity(label = "Make-up air required", unit = Unit.CUBIC_METRE_PER_SECOND, step = 1e-5, leading = true)
            double makeUpM3PerS,

            List<Notice> notices)
            implements HasNotices {}

    private static Result compute(Input input) {
        boolean roomAir = input.appliances() == Appliances.ROOM_AIR;
        Double sealed = input.sealedThresholdM3PerS();
        double threshold = roomAir || sealed == null ? input.thresholdM3PerS() : sealed;
        boolean holds = roomAir || input.scope() == TriggerScope.EVERY_HOUSE;
        boolean required = holds && input.exhaustM3PerS() > threshold;
        double amount = input.amount() == TriggerAmount.WHOLE_EXHAUST
                ? input.exhaustM3PerS()
                : input.exhaustM3PerS() - input.thresholdM3PerS();
        return new Result(required, required ? Math.max(0, amount) : 0, notices(input, required));
    }

    private static List<Notice> notices(Input input, boolean required) {
        List<Notice> said = new ArrayList<>();
        if (!required) {
            said.add(Notice.advice(
                    "pressure-decides",
                    "required",
                    "This rule requires nothing here. That says nothing about the house pressure: compute it for all"
                            + " exhaust together, and measure it.",
                    Citations.PROPOSED));
        }
        if (PressureNotices.isEmpty(input.place()) || PressureNotices.isEmpty(input.confirmedBy())) {
            said.add(Notice.advice(
                    "rule-not-confirmed",
                    "confirmedBy",
                    "Rules differ by place and edition: say where this one is adopted and who confirmed it.",
                    Citations.PROPOSED));
        }
        return List.copyOf(said);
    }
}
