package oakum.portal.commissioning;

import java.time.Instant;

/**
 * A signed filter-drop sheet: how this clean filter resists from now on. Published in the transaction of the signature.
 *
 * @param filterId short name of the filter in the Air part
 * @param airflowM3PerS the highest flow measured, mean of its readings
 * @param dropPa the drop at that flow, mean of its readings
 * @param linearPaSPerM part of the measured curve with face velocity
 * @param squarePaS2PerM2 part with face velocity squared, at 1.2 kg/m³
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
        double densityKgPerM3,
        Instant measuredAt) {}
