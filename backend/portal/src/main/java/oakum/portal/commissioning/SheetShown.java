package oakum.portal.commissioning;

import java.util.List;
import oakum.physics.calculation.Caution;

/**
 * A setting-to-work sheet of one house.
 *
 * @param instrument what it is measured with
 * @param steps in order
 * @param design what the design says, with where it comes from
 * @param measurements latest first
 * @param actions what this person may do now
 */
public record SheetShown(
        String houseId,
        String sheet,
        String title,
        String purpose,
        String instrument,
        List<String> steps,
        List<DesignValue> design,
        List<MeasurementShown> measurements,
        List<Caution> cautions,
        List<String> actions) {}
