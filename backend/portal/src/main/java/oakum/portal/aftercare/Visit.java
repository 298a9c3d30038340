package oakum.portal.aftercare;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A visit to a house.
 *
 * @param dueOn the day before which it should be done
 * @param plannedOn the day it is planned for, or null
 * @param round the round it belongs to, or null
 * @param filters the filters to change
 * @param closedOn the day it was done, or null
 */
public record Visit(
        UUID id,
        String house,
        VisitKind kind,
        String label,
        LocalDate dueOn,
        @Nullable LocalDate plannedOn,
        @Nullable UUID round,
        List<String> filters,
        @Nullable LocalDate closedOn,
        long version,
        List<String> actions) {}
