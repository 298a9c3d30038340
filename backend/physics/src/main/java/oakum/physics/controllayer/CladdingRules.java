package oakum.physics.controllayer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import oakum.physics.controllayer.AssemblyFindings.AssemblyLayer;
import oakum.physics.controllayer.AssemblyFindings.OuterMembrane;
import org.jspecify.annotations.Nullable;

/** What a cladding, its battens and the cavity behind it must not do. */
final class CladdingRules {
    private CladdingRules() {}

    /** Vertical boards need horizontal battens, and these need vertical ones under them so that water and air pass. */
    static List<Finding> battens(Cladding cladding) {
        boolean dams = cladding.boardDirection() == BoardDirection.VERTICAL
                && cladding.battenDirection() == BattenDirection.HORIZONTAL;
        Double counter = cladding.counterBattenDepthM();
        if (!dams) {
            return List.of();
        }
        if (counter == null) {
            return List.of(counterBattens(
                    "counter-battens-not-said",
                    FindingWeight.NOT_PROVEN,
                    "Vertical boards on horizontal battens: nobody has said whether counter-battens lie under them."));
        }
        if (counter == 0) {
            return List.of(counterBattens(
                    "no-counter-battens",
                    FindingWeight.FAILS,
                    "Vertical boards on horizontal battens, without counter-battens under them."));
        }
        if (counter < AssemblyFindings.COUNTER_BATTEN_M) {
            return List.of(counterBattens(
                    "counter-battens-too-thin",
                    FindingWeight.FAILS,
                    String.format(
                            Locale.ROOT,
                            "Counter-battens of %.0f mm under horizontal battens; at least 16 mm are needed.",
                            counter * 1000)));
        }
        return List.of();
    }

    private static Finding counterBattens(String rule, FindingWeight weight, String sentence) {
        return Finding.of(
                rule,
                weight,
                "cladding",
                sentence,
                "A single layer of horizontal battens dams the water that runs down behind the boards, and the air that"
                        + " should dry it.",
                Rules.TIMBER_CLADDING);
    }

    /** The cavity drains at the bottom, breathes at both ends, keeps insects out, and is deep enough. */
    static List<Finding> cavity(Cladding cladding, List<AssemblyLayer> layers) {
        List<Finding> findings = new ArrayList<>();
        if (cladding.bottomEdge() == EdgeState.SEALED) {
            findings.add(Finding.of(
                    "cavity-closed-at-bottom",
                    FindingWeight.FAILS,
                    "cladding",
                    "The cavity behind the cladding is sealed at the bottom.",
                    "Water behind the cladding is trapped: the bottom edge must drain.",
                    Rules.DRAINING_EDGE));
        }
        if (cladding.bottomEdge() == null) {
            findings.add(Finding.of(
                    "bottom-edge-not-said",
                    FindingWeight.NOT_PROVEN,
                    "cladding",
                    "Nobody has said whether the cavity behind the cladding is open at the bottom.",
                    "The bottom edge must drain.",
                    Rules.DRAINING_EDGE));
        }
        boolean countedAsVented = layers.stream().anyMatch(AssemblyLayer::isVented);
        if (countedAsVented && cladding.topClosure() == EdgeState.SEALED) {
            findings.add(Finding.of(
                    "cavity-closed-at-top",
                    FindingWeight.FAILS,
                    "cladding",
                    "The cavity is counted as well ventilated, but closed at the top.",
                    "Air that cannot leave at the top does not move: the cavity drains, it hardly dries.",
                    Rules.TIMBER_CLADDING));
        }
        if (cladding.insectScreen() != null && !cladding.insectScreen()) {
            findings.add(Finding.of(
                    "no-insect-screen",
                    FindingWeight.FAILS,
                    "cladding",
                    "The openings of the cavity have no insect screen.",
                    "Nests close the cavity, and what nests in it gnaws the membrane.",
                    Rules.INSECTS));
        }
        layers.stream()
                .filter(layer -> layer.does(Control.DRAIN) && layer.isVented())
                .findFirst()
                .ifPresent(layer -> depth(cladding, layer, findings));
        return findings;
    }

    private static void depth(Cladding cladding, AssemblyLayer cavity, List<Finding> findings) {
        double depthM = cavity.thicknessM();
        if (depthM < AssemblyFindings.CAPILLARY_BREAK_M) {
            findings.add(Finding.of(
                    "cavity-too-thin",
                    FindingWeight.FAILS,
                    cavity.id(),
                    String.format(
                            Locale.ROOT, "The cavity is %.0f mm deep; below 10 mm water bridges it.", depthM * 1000),
                    "Water that bridges the cavity stays against the membrane.",
                    Rules.CAPILLARY_BREAK));
        } else if (cladding.species() != null && depthM < AssemblyFindings.TIMBER_CAVITY_M) {
            findings.add(Finding.of(
                    "cavity-shallow-for-wood",
                    FindingWeight.LOOK,
                    cavity.id(),
                    String.format(
                            Locale.ROOT,
                            "The cavity behind the wood is %.0f mm deep; 21 mm and more is the habit there.",
                            depthM * 1000),
                    "Wood dries from its back: a shallow cavity moves less air, and squeezed battens or mats less"
                            + " still.",
                    Rules.TIMBER_CLADDING));
        }
    }

    /** Joint over joint and board; null where the boards or joints are not said. */
    static @Nullable Double openFraction(Cladding cladding) {
        Double joint = cladding.jointWidthM();
        Double board = cladding.boardWidthM();
        if (joint != null && joint == 0) {
            return 0.0;
        }
        return joint == null || board == null ? null : joint / (joint + board);
    }

    /** Light and rain through open joints against the membrane's own limits. */
    static List<Finding> light(Cladding cladding, @Nullable OuterMembrane membrane, @Nullable Double openFraction) {
        Double joint = cladding.jointWidthM();
        if (joint == null || joint == 0) {
            return List.of();
        }
        String joints = String.format(Locale.ROOT, "open joints of %.0f mm", joint * 1000);
        if (membrane == null) {
            return List.of(openJoints(
                    "membrane-not-named",
                    FindingWeight.NOT_PROVEN,
                    "Behind " + joints + " no outer membrane is named.",
                    "Which light and rain it stands is a question to its data sheet."));
        }
        if (!membrane.permanentSun()) {
            return List.of(
                    openJoints(
                            "membrane-not-for-permanent-light",
                            FindingWeight.FAILS,
                            "Behind " + joints + " the membrane stands in the light for good; \"" + membrane.label()
                                    + "\" is made for " + membrane.sunLimitDays() + " days of it.",
                            "Sunlight takes the strength of the membrane within months, and nobody sees it behind the boards."));
        }
        List<Finding> findings = new ArrayList<>();
        Double widest = membrane.maxJointWidthM();
        Double most = membrane.maxOpenFraction();
        if (widest != null && joint > widest) {
            findings.add(openJoints(
                    "joint-wider-than-membrane-allows",
                    FindingWeight.FAILS,
                    String.format(
                            Locale.ROOT,
                            "Joints of %.0f mm; \"%s\" allows %.0f mm.",
                            joint * 1000,
                            membrane.label(),
                            widest * 1000),
                    "More light and more rain reach the membrane than it was tested for."));
        }
        if (most != null && openFraction != null && openFraction > most) {
            findings.add(openJoints(
                    "open-share-above-membrane-limit",
                    FindingWeight.FAILS,
                    String.format(
                            Locale.ROOT,
                            "%.1f %% of the cladding is open; \"%s\" allows %.1f %%.",
                            openFraction * 100,
                            membrane.label(),
                            most * 100),
                    "More light and more rain reach the membrane than it was tested for."));
        }
        if (widest == null || most == null || openFraction == null) {
            findings.add(openJoints(
                    "open-joint-limits-not-known",
                    FindingWeight.NOT_PROVEN,
                    "Behind " + joints + ": "
                            + (openFraction == null
                                    ? "the width of the boards is not said."
                                    : "the membrane's own limits for joints are not in the record."),
                    "No standard gives the joint that a membrane stands: its data sheet does."));
        }
        return findings;
    }

    private static Finding openJoints(String rule, FindingWeight weight, String sentence, String reason) {
        return Finding.of(rule, weight, "cladding", sentence, reason, Rules.OPEN_JOINTS);
    }
}
