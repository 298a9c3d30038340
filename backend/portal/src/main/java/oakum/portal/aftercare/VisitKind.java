package oakum.portal.aftercare;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.time.LocalDate;
import java.util.Arrays;

/** Why a house is visited. */
public enum VisitKind {
    FILTER("filter"),
    DAYS_30("30-days"),
    MONTHS_11("11-months"),
    MONTHS_24("24-months"),
    REPORT("report");

    private final String id;

    VisitKind(String id) {
        this.id = id;
    }

    @JsonValue
    public String id() {
        return id;
    }

    @JsonCreator
    public static VisitKind of(String id) {
        return Arrays.stream(values())
                .filter(k -> k.id.equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no kind of visit is named " + id));
    }

    /** As people read it. */
    public String label() {
        return switch (this) {
            case FILTER -> "filter change";
            case REPORT -> "look at what the owner reported";
            case DAYS_30, MONTHS_11, MONTHS_24 -> id.replace('-', ' ') + " after handover";
        };
    }

    /** The day before which it is due, counted from handover; meaningless for filters and reports. */
    LocalDate dueAfter(LocalDate handover) {
        return switch (this) {
            case FILTER, REPORT -> handover;
            case DAYS_30 -> handover.plusDays(30);
            case MONTHS_11 -> handover.plusMonths(11);
            case MONTHS_24 -> handover.plusMonths(24);
        };
    }
}
