package oakum.portal.reading;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How one kind of table is read: kept for a house under a name, so that a logger's files go in as they are.
 *
 * @param timeColumns the columns that together make the time, joined by a blank; without them {@code at}
 * @param timeFormat null for ISO 8601, {@code epoch-s}, {@code epoch-ms}, or a pattern such as {@code MM/dd/yyyy HH:mm}
 * @param zone of times without an offset: {@code Europe/Helsinki}, or {@code +02:00} where the logger knows no summer
 *     time
 * @param delimiter {@code comma}, {@code semicolon} or {@code tab}; without it, found from the header
 * @param decimal {@code point} (assumed without it) or {@code comma}
 * @param headerLine the line with the column names, counted from 1 (assumed without it)
 * @param missing texts that stand for no value, such as {@code -9900}; an empty field always does
 * @param columns which columns go in and to which sensor; the others are passed over
 */
public record ColumnMap(
        @Nullable List<String> timeColumns,
        @Nullable String timeFormat,
        @Nullable String zone,
        @Nullable String delimiter,
        @Nullable String decimal,
        @Nullable Integer headerLine,
        @Nullable List<String> missing,
        @Nullable List<MappedColumn> columns) {

    /** A map that says nothing: the file's own names are the sensors' keys. */
    public static final ColumnMap NONE = new ColumnMap(null, null, null, null, null, null, null, null);

    /**
     * Where one column goes: {@code kept = value * factor + offset}.
     *
     * @param column its name in the file
     * @param sensor the key of the sensor
     * @param factor 1 without it; 0.01 for percent, 133.322387415 for millimetres of mercury
     * @param offset 0 without it; in the unit that is kept
     */
    public record MappedColumn(
            String column,
            String sensor,
            @Nullable Double factor,
            @Nullable Double offset) {}

    /** This map, where the request says nothing else. */
    public ColumnMap with(ColumnMap request) {
        return new ColumnMap(
                or(request.timeColumns, timeColumns),
                or(request.timeFormat, timeFormat),
                or(request.zone, zone),
                or(request.delimiter, delimiter),
                or(request.decimal, decimal),
                or(request.headerLine, headerLine),
                or(request.missing, missing),
                or(request.columns, columns));
    }

    private static <T> @Nullable T or(@Nullable T said, @Nullable T kept) {
        return said == null ? kept : said;
    }
}
