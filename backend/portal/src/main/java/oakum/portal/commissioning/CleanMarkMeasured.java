package oakum.portal.commissioning;

import java.time.Instant;
import oakum.physics.filtration.CleanCurve;

/**
 * A signed filter-drop sheet: how this clean filter resists from now on. Published in the transaction of the signature.
 *
 * @param filterId short name of the filter in the Air part
 * @param airflowM3PerS the highest flow measured, mean of its readings
 * @param dropPa the drop at that flow, mean of its readings
 * @param linearPaSPerM part of the measured curve with face velocity
 * @param squarePaS2PerM2 part with face velocity squared, at 1.2 kg/m³
 * @param faceAreaM2 nominal area of all filters side by side
 * @param densityKgPerM3 of the air while measuring
 * @param measuredAt when it was measured, which is before it was signed
 */
public record CleanMarkMeasured(
        String houseId,
        String filterId,
        double airflowM3PerS,
        double dropPa,
        double linearPaSPerM,
        double squarePaS2PerM2,
        double faceAreaM2,
        double densityKgPerM3,
        Instant measuredAt) {

    /**
     * The clean drop of this filter at another flow of the same air, Pa.
     *
     * @param flowM3PerS at least 0
     */
    public double dropAtPa(double flowM3PerS) {
        return new CleanCurve(linearPaSPerM, squarePaS2PerM2).dropPa(flowM3PerS / faceAreaM2, densityKgPerM3);
    }
}
