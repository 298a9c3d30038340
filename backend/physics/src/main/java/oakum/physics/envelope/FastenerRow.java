package oakum.physics.envelope;

import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/** Fasteners that pierce an insulation layer. */
public record FastenerRow(
        @Entry(label = "Short name", help = "Names the row; letters and digits.", maxLength = 40)
        String id,

        @Entry(label = "Through layer", help = "Short name of the insulation they pierce.", maxLength = 40)
        String layerId,

        @Quantity(
                label = "Conductivity of the metal",
                symbol = "λ_f",
                unit = Unit.WATT_PER_METRE_KELVIN,
                min = 0.01,
                max = 500,
                limitSource = InputRange.PLAUSIBLE,
                help = "Stainless steel 17, steel 50.")
        double conductivityWPerMK,

        @Quantity(
                label = "Diameter",
                symbol = "D",
                unit = Unit.SMALL_METRE,
                min = 0,
                minExclusive = true,
                max = 0.05,
                limitSource = InputRange.PLAUSIBLE)
        double diameterM,

        @Quantity(
                label = "Fasteners on a square metre",
                symbol = "n_f",
                unit = Unit.ONE,
                min = 0,
                max = 200,
                limitSource = InputRange.PLAUSIBLE)
        double perSquareMetre,

        @Quantity(
                label = "Length within the insulation",
                symbol = "d_1",
                unit = Unit.SMALL_METRE,
                min = 0,
                max = 2,
                limitSource = InputRange.PLAUSIBLE,
                help = "Where they are recessed; left out: all the way.")
        @Nullable
        Double lengthInLayerM) {
    private static final double ALPHA = 0.8;
    private static final double LEAST_CONDUCTIVITY_W_PER_M_K = 1;

    /**
     * ΔU_f = α λ_f A_f n_f/d_0·(R_1/R_tot,h)², α = 0.8, or 0.8 d_1/d_0 where they are recessed; none below 1 W/(m K)
     * (ISO 6946 Annex F).
     *
     * @param layerThicknessM of the insulation, d_0
     * @param share of the insulation's resistance in the whole
     */
    double addedWPerM2K(double layerThicknessM, double share) {
        if (conductivityWPerMK < LEAST_CONDUCTIVITY_W_PER_M_K) {
            return 0;
        }
        double within = lengthInLayerM == null ? 1 : Math.min(1, lengthInLayerM / layerThicknessM);
        double area = Math.PI * diameterM * diameterM / 4;
        return ALPHA * within * conductivityWPerMK * area * perSquareMetre / layerThicknessM * share * share;
    }
}
