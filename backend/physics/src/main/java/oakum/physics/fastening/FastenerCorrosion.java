package oakum.physics.fastening;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Caution;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Labelled;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Source;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Verdict;
import org.jspecify.annotations.Nullable;

/** Whether the metal of a fastener lasts in its wood and its place. */
public final class FastenerCorrosion {
    private static final double AT_THE_COAST_M = 1000;
    private static final double NEAR_THE_COAST_M = 5000;

    public static final Calculation<Input, Result> CALCULATION = Calculation.declare(
                    "fastener-corrosion", "1.0", "Fastener: corrosion", Input.class, Result.class)
            .purpose(
                    "Says which metals last outdoors in a wood, its treatment and its distance from the sea, and judges"
                            + " the one that is planned.")
            .equation("outdoors: hot-dip galvanised at least", Citations.OUTDOORS)
            .equation("treated wood: hot-dip galvanised, stainless, silicon bronze or copper", Citations.TREATED)
            .equation("tannic wood: stainless 304 at least", Citations.TANNIC)
            .equation("stainless 316 within 1 km of salt water, advised within 5 km", Citations.COAST)
            .source(Citations.TREATED)
            .source(Citations.TANNIC)
            .source(Citations.COAST)
            .source(Citations.MIXED)
            .source(Citations.FOAM)
            .caution(Cautions.STRUCTURE)
            .caution(Caution.CODE_AUTHORITY)
            .validation("The rules are those of the sources; each is broken once in a test. No published example was"
                    + " found.")
            .by(FastenerCorrosion::compute);

    private FastenerCorrosion() {}

    /** The metal of a fastener. */
    public enum Metal implements Labelled {
        BRIGHT_STEEL("bright steel", 0),
        ELECTRO_GALVANISED("electro-galvanised steel", 0),
        HOT_DIP_GALVANISED("hot-dip galvanised steel", 0),
        SILICON_BRONZE("silicon bronze", 1),
        COPPER("copper", 1),
        STAINLESS_304("stainless 304", 2),
        STAINLESS_316("stainless 316", 2);

        private final String label;
        private final int family;

        Metal(String label, int family) {
            this.label = label;
            this.family = family;
        }

        @Override
        public String label() {
            return label;
        }
    }

    /** What the fastener sits in. */
    public enum Wood implements Labelled {
        PLAIN("untreated, without tannin: spruce, pine, fir"),
        TANNIC("tannic: cedar, redwood, oak, chestnut, thermally modified"),
        PRESERVATIVE_TREATED("preservative-treated"),
        FIRE_RETARDANT_TREATED("fire-retardant-treated");

        private final String label;

        Wood(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }

        boolean isTreated() {
            return this == PRESERVATIVE_TREATED || this == FIRE_RETARDANT_TREATED;
        }
    }

    /** A fastener outdoors. */
    public record Input(
            @Entry(label = "Metal planned") Metal metal,

            @Entry(label = "Board") Wood board,

            @Entry(label = "Wood that holds") Wood batten,

            @Quantity(
                    label = "Distance from salt water",
                    unit = Unit.METRE,
                    min = 0,
                    max = 5_000_000,
                    limitSource = Citations.PLAUSIBLE)
            double coastM,

            @Entry(label = "Furring lies horizontally over foam")
            boolean horizontalOverFoam,

            @Nullable
            @Entry(label = "Another metal in the same joint", help = "Flashing, bracket or mesh; leave out for none.")
            Metal otherMetal) {}

    /** One rule. */
    public record RuleResult(
            @Entry(label = "Key") String id,

            @Entry(label = "Rule") String rule,

            @Entry(label = "Kept") Verdict verdict,

            @Entry(label = "Source") String source) {}

    /** What lasts. */
    public record Result(
            @Entry(label = "Metal planned") Verdict verdict,

            @Entry(label = "Metals that last") String lasting,

            @Quantity(label = "Rules broken", unit = Unit.COUNT, step = 1, leading = true)
            int brokenCount,

            @Entry(label = "Rules") List<RuleResult> rules) {}

    private static Result compute(Input input) {
        List<RuleResult> rules = new ArrayList<>();
        Set<Metal> lasting = EnumSet.allOf(Metal.class);
        allow(
                "outdoors",
                "Hot-dip galvanised at least outdoors",
                EnumSet.range(Metal.HOT_DIP_GALVANISED, Metal.STAINLESS_316),
                Citations.OUTDOORS,
                input,
                lasting,
                rules);
        if (input.board().isTreated() || input.batten().isTreated()) {
            allow(
                    "treated",
                    "Hot-dip galvanised, stainless, silicon bronze or copper in treated wood",
                    EnumSet.range(Metal.HOT_DIP_GALVANISED, Metal.STAINLESS_316),
                    Citations.TREATED,
                    input,
                    lasting,
                    rules);
        }
        Set<Metal> stainless = EnumSet.of(Metal.STAINLESS_304, Metal.STAINLESS_316);
        if (input.board() == Wood.TANNIC || input.batten() == Wood.TANNIC) {
            allow(
                    "tannic",
                    "Stainless 304 at least in tannic wood, or black stains run",
                    stainless,
                    Citations.TANNIC,
                    input,
                    lasting,
                    rules);
        }
        coast(input, lasting, rules);
        if (input.horizontalOverFoam()) {
            rules.add(rule(
                    "horizontal-furring",
                    "Horizontal furring over foam is preservative-treated",
                    input.batten() == Wood.PRESERVATIVE_TREATED ? Verdict.PASSES : Verdict.FAILS,
                    Citations.FOAM));
        }
        Metal other = input.otherMetal();
        if (other != null) {
            rules.add(rule(
                    "one-metal",
                    "No two metals in one wet joint: " + input.metal().label() + " and " + other.label(),
                    other.family == input.metal().family ? Verdict.PASSES : Verdict.FAILS,
                    Citations.MIXED));
        }
        int broken =
                (int) rules.stream().filter(r -> r.verdict() == Verdict.FAILS).count();
        boolean unsure = rules.stream().anyMatch(r -> r.verdict() == Verdict.NOT_PROVEN);
        return new Result(
                broken > 0 ? Verdict.FAILS : unsure ? Verdict.NOT_PROVEN : Verdict.PASSES,
                String.join(", ", lasting.stream().map(Metal::label).toList()),
                broken,
                List.copyOf(rules));
    }

    private static void coast(Input input, Set<Metal> lasting, List<RuleResult> rules) {
        if (input.coastM() > NEAR_THE_COAST_M) {
            return;
        }
        Set<Metal> marine = EnumSet.of(Metal.STAINLESS_316);
        if (input.coastM() <= AT_THE_COAST_M) {
            allow("coast", "Stainless 316 within 1 km of salt water", marine, Citations.COAST, input, lasting, rules);
        } else {
            rules.add(rule(
                    "near-coast",
                    String.format(
                            Locale.ROOT, "Stainless 316 is advised %.1f km from salt water", input.coastM() / 1000),
                    marine.contains(input.metal()) ? Verdict.PASSES : Verdict.NOT_PROVEN,
                    Citations.COAST));
        }
    }

    private static void allow(
            String id,
            String rule,
            Set<Metal> allowed,
            Source source,
            Input input,
            Set<Metal> lasting,
            List<RuleResult> rules) {
        lasting.retainAll(allowed);
        rules.add(rule(id, rule, allowed.contains(input.metal()) ? Verdict.PASSES : Verdict.FAILS, source));
    }

    private static RuleResult rule(String id, String rule, Verdict verdict, Source source) {
        return new RuleResult(id, rule, verdict, source.printed());
    }
}
