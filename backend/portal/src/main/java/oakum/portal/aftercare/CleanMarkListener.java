package oakum.portal.aftercare;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Locale;
import oakum.portal.commissioning.CleanMarkMeasured;
import oakum.portal.houserecord.Houses;
import oakum.portal.people.Audit;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/** Makes a signed filter drop the clean mark of that filter, in the transaction of the signature. */
@Component
class CleanMarkListener {
    private final CleanMarks marks;
    private final Filters filters;
    private final Houses houses;
    private final Audit audit;

    CleanMarkListener(CleanMarks marks, Filters filters, Houses houses, Audit audit) {
        this.marks = marks;
        this.filters = filters;
        this.houses = houses;
        this.audit = audit;
    }

    /**
     * The sheet is of a new filter, so the filter counts as put in on the day of measuring. Where it is not followed yet,
     * the mark waits for its follow-up; where a later filter is in place, it is history.
     */
    @EventListener
    void measured(CleanMarkMeasured measured) {
        marks.keep(measured);
        String house = measured.houseId();
        LocalDate on = LocalDate.ofInstant(
                measured.measuredAt(), ZoneId.of(houses.find(house).timeZone()));
        filters.find(house, measured.filterId())
                .map(Filters.Kept::filter)
                .filter(filter -> !on.isBefore(filter.fittedOn()))
                .ifPresent(filter -> {
                    CleanMark mark = new CleanMark(
                            measured.dropAtPa(filter.highFlowM3PerS()), measured.dropAtPa(filter.lowFlowM3PerS()));
                    filters.fitted(house, filter.id(), on, mark);
                    audit.record(
                            "clean-mark-kept",
                            house,
                            String.format(
                                    Locale.ROOT,
                                    "Filter %s: clean mark %.1f Pa at high and %.1f Pa at low airflow, from the signed"
                                            + " filter drop of %s.",
                                    filter.id(),
                                    mark.highPa(),
                                    mark.lowPa(),
                                    on));
                });
    }
}
