package oakum.portal.aftercare;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was found and left at a visit.
 *
 * @param doneOn the day of the visit
 * @param filters one entry for each filter of the visit, none for the other visits
 * @param note what was seen: water, noise, smell
 */
public record VisitClosing(
        LocalDate doneOn,
        List<ChangedFilter> filters,
        @Nullable String note) {
    /**
     * A filter that was changed.
     *
     * @param sizeReadOff the size as printed on the new filter
     * @param photos ids of photos, may be empty
     */
    public record ChangedFilter(
            String filter, MeasuredDrop asFound, MeasuredDrop asLeft, String sizeReadOff, List<String> photos) {}

    /** Pressure drop at high and at low airflow. */
    public record MeasuredDrop(double highPa, double lowPa) {}
}
