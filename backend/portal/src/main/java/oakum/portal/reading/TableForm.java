package oakum.portal.reading;

import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import oakum.portal.http.Problem;
import org.jspecify.annotations.Nullable;

/**
 * A {@link ColumnMap} that was looked through: every choice made, every name known.
 *
 * @param columns by name in the file; null where the file's own names are sensor keys
 */
record TableForm(
        @Nullable List<String> timeColumns,
        TimeText time,
        @Nullable Character delimiter,
        NumberText number,
        int headerLine,
        Set<String> missing,
        @Nullable Map<String, Target> columns) {

    /** A sensor and what turns the file's numbers into its unit. */
    record Target(KnownSensor sensor, double factor, double offset) {
        Target(KnownSensor sensor) {
            this(sensor, 1, 0);
        }
    }

    /**
     * Looks a map through.
     *
     * @param sensors the sensors of the house by key
     * @throws Problem 422 naming the field that cannot be
     */
    static TableForm of(ColumnMap map, Map<String, KnownSensor> sensors) {
        int headerLine = map.headerLine() == null ? 1 : map.headerLine();
        if (headerLine < 1 || headerLine > 1000) {
            throw refused("headerLine", headerLine, "is a line from 1 to 1000");
        }
        return new TableForm(
                map.timeColumns() == null || map.timeColumns().isEmpty() ? null : List.copyOf(map.timeColumns()),
                time(map.timeFormat(), zone(map.zone())),
                delimiter(map.delimiter()),
                new NumberText(decimal(map.decimal())),
                headerLine,
                map.missing() == null ? Set.of() : Set.copyOf(new HashSet<>(map.missing())),
                map.columns() == null || map.columns().isEmpty() ? null : columns(map.columns(), sensors));
    }

    private static TimeText time(@Nullable String format, @Nullable ZoneId zone) {
        try {
            return new TimeText(format, zone);
        } catch (IllegalArgumentException e) {
            throw refused(
                    "timeFormat", format, "is epoch-s, epoch-ms or a pattern of y M d H m s, as dd.MM.yyyy HH:mm");
        }
    }

    private static @Nullable ZoneId zone(@Nullable String text) {
        try {
            // a plus sign that was not escaped arrives in a query as a blank
            return text == null ? null : ZoneId.of(text.replace(' ', '+'));
        } catch (DateTimeException e) {
            throw refused("zone", text, "is a time zone (Europe/Helsinki) or an offset (+02:00)");
        }
    }

    private static @Nullable Character delimiter(@Nullable String text) {
        if (text == null) {
            return null;
        }
        return switch (text) {
            case "comma", "," -> ',';
            case "semicolon", ";" -> ';';
            case "tab", "\t" -> '\t';
            default -> throw refused("delimiter", text, "is comma, semicolon or tab");
        };
    }

    private static char decimal(@Nullable String text) {
        if (text == null) {
            return '.';
        }
        return switch (text) {
            case "point", "." -> '.';
            case "comma", "," -> ',';
            default -> throw refused("decimal", text, "is point or comma");
        };
    }

    private static Map<String, Target> columns(List<ColumnMap.MappedColumn> mapped, Map<String, KnownSensor> sensors) {
        Map<String, Target> columns = new HashMap<>();
        Set<String> taken = new HashSet<>();
        for (int i = 0; i < mapped.size(); i++) {
            ColumnMap.MappedColumn column = mapped.get(i);
            String at = "columns[" + i + "].";
            KnownSensor sensor = sensors.get(column.sensor());
            if (sensor == null) {
                throw refused(at + "sensor", column.sensor(), "is the key of a sensor of this house");
            }
            double factor = column.factor() == null ? 1 : column.factor();
            double offset = column.offset() == null ? 0 : column.offset();
            if (!Double.isFinite(factor) || factor == 0) {
                throw refused(at + "factor", factor, "is a number other than 0");
            }
            if (!Double.isFinite(offset)) {
                throw refused(at + "offset", offset, "is a number");
            }
            if (columns.put(column.column(), new Target(sensor, factor, offset)) != null) {
                throw refused(at + "column", column.column(), "stands in the map once");
            }
            if (!taken.add(column.sensor())) {
                throw refused(at + "sensor", column.sensor(), "takes one column of a file");
            }
        }
        return columns;
    }

    private static Problem refused(String field, @Nullable Object value, String allowed) {
        return Problem.unprocessable("column-map", field, field + " " + allowed + "; it was \"" + value + "\".");
    }
}
