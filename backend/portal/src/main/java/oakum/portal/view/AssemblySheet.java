package oakum.portal.view;

import java.util.List;
import oakum.physics.controllayer.Cladding;
import oakum.portal.calculation.AnswerJson;
import oakum.portal.calculation.FieldJson;
import oakum.portal.houserecord.EnclosurePart.Fastener;
import oakum.portal.view.Joins.JoinsControl;
import oakum.portal.view.Joins.JoinsFinding;
import oakum.portal.view.Joins.JoinsProof;
import org.jspecify.annotations.Nullable;

/**
 * One assembly for its page, but for the computed years.
 *
 * @param azimuthDeg which way it faces, clockwise from north
 * @param tiltDeg 0 lies face up, 90 stands
 * @param results each calculation about this assembly with its inputs from the record: thermal resistance with both
 *     limits, the monthly vapour balance
 * @param sunDaysUsed days that the membrane has stood in the sun by today, or null where no clock runs
 * @param proofs that rest on this assembly
 * @param junctions short names of the junctions that it meets
 */
record AssemblySheet(
        String houseId,
        String id,
        String label,
        String kind,
        String kindLabel,
        @Nullable String outside,
        @Nullable String outsideLabel,
        boolean bounds,
        double areaM2,
        @Nullable Double azimuthDeg,
        @Nullable Double tiltDeg,
        @Nullable Double heightM,
        List<SheetLayer> layers,
        @Nullable Cladding cladding,
        List<Fastener> fasteners,
        List<SheetResult> results,
        List<JoinsFinding> findings,
        @Nullable Integer sunDaysUsed,
        List<JoinsProof> proofs,
        List<String> junctions,
        List<String> actions) {

    /**
     * One layer, from inside.
     *
     * @param drawAs how it is hatched
     * @param materialLabel of the library's material, or null
     * @param values what is known of it, each with where it comes from
     */
    record SheetLayer(
            String id,
            String label,
            String material,
            @Nullable String materialId,
            @Nullable String materialLabel,
            double thicknessM,
            String drawAs,
            List<JoinsControl> controls,
            @Nullable String ventilation,
            @Nullable Double openingM2PerM,
            @Nullable String framingMaterialId,
            @Nullable Double framingFraction,
            @Nullable String bottomEdge,
            List<SheetValue> values) {}

    /**
     * One value of a layer.
     *
     * @param name as in the record: conductivityWPerMK
     * @param source where it comes from
     * @param status how well the source was seen, or "typed in the record"
     */
    record SheetValue(String name, String label, double value, FieldJson.UnitJson unit, String source, String status) {}

    /**
     * One calculation about this assembly.
     *
     * @param answer null where it cannot be computed
     * @param refusal why, or null
     */
    record SheetResult(
            String calculation,
            String title,
            @Nullable AnswerJson answer,
            @Nullable String refusal) {}
}
