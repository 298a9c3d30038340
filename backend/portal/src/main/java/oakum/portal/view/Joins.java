package oakum.portal.view;

import java.util.List;
import oakum.portal.houserecord.standing.ProofState;
import org.jspecify.annotations.Nullable;

/**
 * The control layers of a house and how they are joined.
 *
 * @param lines water, air (the red line), vapour, heat
 * @param findings about the house as a whole; those of one assembly or junction stand there
 * @param proofs that rest on the enclosure
 * @param refusal why the lines could not be drawn, or null; then lines and breaks are empty
 * @param actions what this person may do now
 */
record Joins(
        String houseId,
        List<JoinsLine> lines,
        List<JoinsBreak> breaks,
        List<JoinsAssembly> assemblies,
        List<JoinsJunction> junctions,
        List<JoinsHole> holes,
        List<JoinsMissingHole> missingHoles,
        List<JoinsFinding> findings,
        List<JoinsProof> proofs,
        @Nullable String refusal,
        List<String> actions) {

    /**
     * One control around the whole volume.
     *
     * @param sentence the finding in words
     */
    record JoinsLine(
            String control, String controlLabel, boolean closed, int breakCount, int pieceCount, String sentence) {}

    /** Where a line is open; one of assembly, junction and hole is named, or none for a hole that is not listed. */
    record JoinsBreak(
            String id,
            String control,
            String controlLabel,
            @Nullable String assembly,
            @Nullable String junction,
            @Nullable String hole,
            @Nullable String coverCheck,
            String reason) {}

    /**
     * One face of the envelope.
     *
     * @param carriers the layers that are counted on
     */
    record JoinsAssembly(
            String id,
            String label,
            String kind,
            String kindLabel,
            @Nullable String outside,
            @Nullable String outsideLabel,
            boolean bounds,
            double areaM2,
            List<JoinsLayer> layers,
            List<JoinsCarrier> carriers,
            List<JoinsFinding> findings) {}

    /** One layer, from inside. */
    record JoinsLayer(
            String id, String label, String material, double thicknessM, String drawAs, List<JoinsControl> controls) {}

    /** What a layer does; second means that it only helps. */
    record JoinsControl(String control, String label, boolean second) {}

    /** The layer that is counted on; an empty layer id stands for the roof over a vented attic. */
    record JoinsCarrier(String control, String controlLabel, String layer, String layerLabel) {}

    /** Where two faces meet. */
    record JoinsJunction(
            String id,
            String label,
            String kind,
            String kindLabel,
            String from,
            String fromLabel,
            @Nullable String to,
            @Nullable String toLabel,
            @Nullable Boolean thermalBreak,
            List<JoinsJoin> joins,
            @Nullable JoinsCheck coverCheck,
            List<JoinsFinding> findings) {}

    /**
     * How one control passes on.
     *
     * @param holds whether the line is closed here
     * @param reason why not, or null
     */
    record JoinsJoin(
            String control,
            String controlLabel,
            String state,
            String stateLabel,
            @Nullable String detail,
            boolean holds,
            @Nullable String reason) {}

    /**
     * The cover check that looks at it.
     *
     * @param title null where the code is no cover check of this house
     * @param state null where the house has not made it yet
     */
    record JoinsCheck(
            String code,
            @Nullable String title,
            @Nullable String state,
            @Nullable String stateLabel) {}

    /** One hole through the red line. */
    record JoinsHole(
            String id,
            String label,
            String assembly,
            String assemblyLabel,
            @Nullable String expected,
            @Nullable Double diameterM,
            @Nullable String sealedBy,
            boolean holds,
            @Nullable String reason,
            @Nullable JoinsCheck coverCheck) {}

    /** Holes that the equipment brings and nobody has named. */
    record JoinsMissingHole(String id, String label, int expectedCount, int namedCount) {}

    /** One rule broken or not proven. */
    record JoinsFinding(
            String id,
            String weight,
            String weightLabel,
            String about,
            String sentence,
            String reason,
            String source) {}

    /**
     * A proof that rests on the enclosure.
     *
     * @param assembly the one that it is about, or null
     */
    record JoinsProof(
            String key,
            String title,
            @Nullable String calculation,
            @Nullable String assembly,
            int issue,
            ProofState state,
            String copyCode) {}
}
