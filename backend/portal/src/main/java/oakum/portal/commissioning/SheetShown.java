package oakum.portal.commissioning;

import java.util.List;
import oakum.physics.calculation.Caution;
import oakum.physics.calculation.Unit;
import oakum.portal.calculation.FieldJson.UnitJson;

/**
 * A setting-to-work sheet of one house.
 *
 * @param instrument what it is measured with
 * @param steps in order
 * @param design what the design says, with where it comes from
 * @param measurements latest first
 * @param units in which the fields are typed
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
        SheetUnits units,
        List<String> actions) {

    /** In which units the fields of a sheet are typed; what is sent stays SI. */
    public record SheetUnits(
            UnitJson pressure,
            UnitJson drop,
            UnitJson airflow,
            UnitJson temperature,
            UnitJson wind,
            UnitJson time,
            UnitJson share,
            UnitJson airChanges) {
        static final SheetUnits ALL = new SheetUnits(
                UnitJson.of(Unit.HOUSE_PASCAL),
                UnitJson.of(Unit.PASCAL),
                UnitJson.of(Unit.CUBIC_METRE_PER_SECOND),
                UnitJson.of(Unit.CELSIUS),
                UnitJson.of(Unit.METRE_PER_SECOND),
                UnitJson.of(Unit.SECOND),
                UnitJson.of(Unit.FRACTION),
                UnitJson.of(Unit.PER_HOUR));
    }
}
