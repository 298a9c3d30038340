package oakum.physics.weather;

import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.time.temporal.ChronoField;
import java.time.temporal.TemporalAccessor;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import oakum.physics.calculation.Labelled;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Source;
import oakum.physics.calculation.Violation;
import oakum.physics.moistair.BelowFreezing;
import oakum.physics.moistair.MoistAir;
import oakum.physics.moistair.StandardAtmosphere;
import org.jspecify.annotations.Nullable;

/**
 * How one kind of weather table is read: the column map of a source, said once and kept under the firm's own name for it.
 *
 * @param headerLine line with the column names, counted from 1; 0 where there is none
 * @param firstDataLine line at which the rows begin, counted from 1
 * @param delimiter between columns
 * @param decimal point or comma
 * @param timeColumns columns that together make the time, joined by a blank
 * @param timeFormat pattern such as {@code MM/dd/yyyy HH:mm} or {@code yyyy M d H m}; empty for ISO 8601
 * @param clockOffsetH how far the table's clock is ahead of UTC, hours; a clock that knows summer time is not read
 * @param dates whether the years count
 * @param sums where sun and precipitation lie: between the row before and the stamp, or after the stamp. All else belongs
 *     to the stamp
 * @param humidity what relative humidity and dew point below freezing are counted against
 * @param missing texts or numbers that stand for no value; an empty field always does
 * @param columns which columns are read
 */
public record WeatherTable(
        int headerLine,
        int firstDataLine,
        char delimiter,
        char decimal,
        List<String> timeColumns,
        String timeFormat,
        double clockOffsetH,
        Dates dates,
        Sums sums,
        BelowFreezing humidity,
        Set<String> missing,
        List<WeatherColumn> columns) {

    /** Whether the years of the dates count. */
    public enum Dates implements Labelled {
        AS_DATED("as dated"),
        /** Months of any years make one typical year. */
        TYPICAL_YEAR("a typical year of months from several years");

        private final String label;

        Dates(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }
    }

    /** Where the sun and precipitation of a row lie. */
    public enum Sums implements Labelled {
        BEFORE_STAMP("over the time before the stamp"),
        AFTER_STAMP("over the time after the stamp");

        private final String label;

        Sums(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }
    }

    static final Source READING = Source.proposed(
            "reading of weather tables: relative humidity up to 110 % and dew points up to 0.5 K above the"
                    + " air are taken as saturated, small negative sun as none");

    private static final int MOST_VIOLATIONS = 20;
    private static final double MOST_HUMIDITY = 1.10;
    private static final double DEW_POINT_EXCESS_K = 0.5;
    private static final double HUMIDITY_MISFIT = 0.05;
    private static final double DARK_W_PER_M2 = -20;
    private static final Pattern NUMBER = Pattern.compile("[+-]?\\d+(\\.\\d*)?");
    private static final Pattern HOUR_24 = Pattern.compile("(?<![\\d:/.-])24(:00)?(:00)?$");
    private static final DateTimeFormatter ISO = new DateTimeFormatterBuilder()
            .appendPattern("uuuu-MM-dd['T'][' ']HH:mm[:ss]")
            .appendFraction(ChronoField.NANO_OF_SECOND, 0, 9, true)
            .appendPattern("[XXX]")
            .toFormatter(Locale.ROOT)
            .withResolverStyle(ResolverStyle.STRICT);

    /** Refuses a map that reads nothing or reads twice. */
    public WeatherTable {
        timeColumns = List.copyOf(timeColumns);
        missing = Set.copyOf(missing);
        columns = List.copyOf(columns);
        require(
                headerLine >= 0 && headerLine < firstDataLine && firstDataLine <= 1000,
                "firstDataLine",
                firstDataLine,
                "the rows begin after the header, at most at line 1000");
        require(!timeColumns.isEmpty(), "timeColumns", "", "at least one column says the time");
        require(Math.abs(clockOffsetH) <= 14, "clockOffsetH", clockOffsetH, "a clock is −14 to 14 h ahead of UTC");
        List<WeatherColumn.Meaning> meanings =
                columns.stream().map(WeatherColumn::meaning).toList();
        require(
                meanings.size() == Set.copyOf(meanings).size(),
                "columns",
                meanings,
                "each meaning is given by one column");
        require(
                meanings.contains(WeatherColumn.Meaning.AIR_TEMPERATURE)
                        && meanings.stream().anyMatch(WeatherColumn.Meaning::isHumidity),
                "columns",
                meanings,
                "weather needs air temperature and one of relative humidity, dew point, humidity ratio, vapour pressure");
    }

    private static void require(boolean right, String field, Object value, String rule) {
        if (!right) {
            throw Refused.of(field, String.valueOf(value), field + ": " + rule + "; it was " + value + ".", READING);
        }
    }

    /**
     * Reads a table.
     *
     * @param place where the weather is from
     * @param source what it is, as people cite it
     * @param lines the whole table
     * @throws Refused naming line, column, value and range, or what is missing
     */
    public HourlyWeather read(Place place, String source, List<String> lines) {
        return new Reading(place, lines).weather(source);
    }

    private DateTimeFormatter formatter() {
        try {
            return timeFormat.isEmpty()
                    ? ISO
                    : DateTimeFormatter.ofPattern(timeFormat.replace('y', 'u'), Locale.ROOT)
                            .withResolverStyle(ResolverStyle.STRICT);
        } catch (IllegalArgumentException e) {
            throw Refused.of("timeFormat", timeFormat, "No pattern of a time: " + timeFormat + ".", READING);
        }
    }

    /** One table being read. */
    private final class Reading {
        private final Place place;
        private final List<String> lines;
        private final DateTimeFormatter formatter = formatter();
        private final Map<WeatherColumn.Meaning, Integer> at = new EnumMap<>(WeatherColumn.Meaning.class);
        private final Map<WeatherQuantity, TimedValues.Growing> read = new EnumMap<>(WeatherQuantity.class);
        private final List<Violation> violations = new ArrayList<>();
        private final List<Notice> notices = new ArrayList<>();
        private final int[] timeAt;
        private final Set<Double> missingNumbers;
        private final long toPlaceS;
        private int leapDays;
        private int supersaturated;
        private int misfits;
        private int dark;
        private double stepH;

        Reading(Place place, List<String> lines) {
            this.place = place;
            this.lines = lines;
            if (lines.size() < firstDataLine) {
                throw Refused.of(
                        "rows",
                        Integer.toString(lines.size()),
                        "The table has " + lines.size() + " lines; its rows begin at line " + firstDataLine + ".",
                        READING);
            }
            List<String> header = headerLine == 0
                    ? List.of()
                    : Delimited.split(lines.get(headerLine - 1).replace("\uFEFF", ""), delimiter);
            timeAt = timeColumns.stream().mapToInt(name -> place(header, name)).toArray();
            for (WeatherColumn column : columns) {
                at.put(column.meaning(), place(header, column.column()));
            }
            missingNumbers = missing.stream()
                    .filter(text -> NUMBER.matcher(text).matches())
                    .map(Double::valueOf)
                    .collect(Collectors.toSet());
            toPlaceS = Math.round((place.standardOffsetH() - clockOffsetH) * 3600);
        }

        private int place(List<String> header, String name) {
            if (name.matches("#\\d{1,3}")) {
                return Integer.parseInt(name.substring(1)) - 1;
            }
            int index = header.indexOf(name);
            if (index < 0 || index != header.lastIndexOf(name)) {
                throw Refused.of(
                        "columns",
                        name,
                        (index < 0
                                        ? "The header, line " + headerLine + ", has no column \"" + name + "\"; it has "
                                        : "The header has the column \"" + name + "\" more than once: ")
                                + header.stream().limit(100).collect(Collectors.joining(", ")) + ".",
                        READING);
            }
            return index;
        }

        HourlyWeather weather(String source) {
            for (int i = firstDataLine - 1; i < lines.size() && violations.size() < MOST_VIOLATIONS; i++) {
                if (!lines.get(i).isBlank()) {
                    row(i + 1, Delimited.split(lines.get(i), delimiter));
                }
            }
            if (!violations.isEmpty()) {
                throw new Refused(violations);
            }
            say();
            Map<WeatherQuantity, TimedValues> given = new EnumMap<>(WeatherQuantity.class);
            read.forEach((quantity, values) -> given.put(quantity, values.done()));
            Hours hours = new Hours(
                    place,
                    source,
                    sums == Sums.BEFORE_STAMP ? Hours.Interval.BEFORE_STAMP : Hours.Interval.AFTER_STAMP,
                    given,
                    notices);
            return dates == Dates.TYPICAL_YEAR ? hours.typicalYear() : hours.asDated();
        }

        private void say() {
            if (dates == Dates.TYPICAL_YEAR) {
                notices.add(Notice.note(
                        "typical-year",
                        "",
                        "A typical year of months from several years: good for" + " means, not for the worst case.",
                        READING));
            }
            if (has(WeatherColumn.Meaning.RELATIVE_HUMIDITY) || has(WeatherColumn.Meaning.DEW_POINT)) {
                notices.add(Notice.note(
                        "humidity-convention",
                        WeatherQuantity.VAPOUR_PRESSURE.name(),
                        "Humidity below freezing was read as counted " + humidity.label() + ".",
                        READING));
            }
            count(
                    leapDays,
                    "leap-day-removed",
                    "%d rows of 29 February were left out, so that the year has 8760 hours.");
            count(
                    supersaturated,
                    "humidity-capped",
                    "In %d rows the humidity was above saturation; they were taken as" + " saturated over water.");
            count(
                    misfits,
                    "humidity-misfit",
                    "In %d rows relative humidity and dew point disagree by more than 5 points;"
                            + " the dew point was taken.");
            count(dark, "negative-sun", "In %d rows irradiance was slightly negative; none was taken.");
        }

        private void count(int count, String code, String sentence) {
            if (count > 0) {
                notices.add(Notice.note(code, "", String.format(Locale.ROOT, sentence, count), READING));
            }
        }

        private boolean has(WeatherColumn.Meaning meaning) {
            return at.containsKey(meaning);
        }

        private void row(int line, List<String> fields) {
            @Nullable Long second = second(line, fields);
            if (second == null) {
                return;
            }
            double temperatureC = Double.NaN;
            for (WeatherColumn column : columns) {
                if (!column.meaning().isHumidity()) {
                    double value = value(line, fields, column);
                    if (column.meaning() == WeatherColumn.Meaning.AIR_TEMPERATURE) {
                        temperatureC = value;
                    }
                    keep(second, column.meaning().quantity(), value);
                }
            }
            keep(second, WeatherQuantity.VAPOUR_PRESSURE, vapourPressurePa(line, fields, temperatureC));
        }

        private void keep(long second, WeatherQuantity quantity, double value) {
            if (!Double.isNaN(value)) {
                read.computeIfAbsent(quantity, q -> new TimedValues.Growing()).add(second, value);
            }
        }

        /** Seconds in the place's standard time; null where the row is left out or refused. */
        private @Nullable Long second(int line, List<String> fields) {
            StringBuilder joined = new StringBuilder();
            for (int column : timeAt) {
                joined.append(joined.isEmpty() ? "" : " ").append(column < fields.size() ? fields.get(column) : "");
            }
            String text = joined.toString();
            String midnight = HOUR_24.matcher(text).replaceFirst("00$1$2");
            try {
                TemporalAccessor parsed = formatter.parse(midnight);
                LocalDateTime stamp = LocalDateTime.from(parsed);
                long offsetS = parsed.isSupported(ChronoField.OFFSET_SECONDS)
                        ? Math.round(place.standardOffsetH() * 3600) - parsed.get(ChronoField.OFFSET_SECONDS)
                        : toPlaceS;
                LocalDateTime local = stamp.plusSeconds(offsetS);
                if (dates == Dates.TYPICAL_YEAR) {
                    if (local.getMonthValue() == 2 && local.getDayOfMonth() == 29) {
                        leapDays++;
                        return null;
                    }
                    local = local.withYear(HourlyWeather.ANY_YEAR);
                }
                return local.plusDays(midnight.equals(text) ? 0 : 1).toEpochSecond(ZoneOffset.UTC);
            } catch (DateTimeException e) {
                violations.add(Violation.of(
                        "line " + line,
                        text,
                        "line " + line + ": \"" + text + "\" is no time of the form "
                                + (timeFormat.isEmpty() ? "2026-05-14 09:30" : timeFormat) + ".",
                        READING.printed()));
                return null;
            }
        }

        /** The value in the unit that is kept; NaN where there is none or it is refused. */
        private double value(int line, List<String> fields, WeatherColumn column) {
            double written = written(line, fields, column);
            if (Double.isNaN(written)) {
                return written;
            }
            double kept = column.unit().kept(written);
            WeatherQuantity quantity = column.meaning().quantity();
            if (column.unit().isAmount()) {
                kept /= stepH();
            }
            if (quantity.kind() == WeatherQuantity.Kind.SUN && kept < 0 && kept >= DARK_W_PER_M2) {
                dark++;
                kept = 0;
            }
            if (column.meaning().isHumidity() && column.meaning() != WeatherColumn.Meaning.VAPOUR_PRESSURE) {
                return kept;
            }
            return checked(line, column, written, kept, quantity.min(), quantity.max(), quantity.ucum());
        }

        private double checked(
                int line, WeatherColumn column, double written, double kept, double min, double max, String ucum) {
            if (kept >= min && kept <= max) {
                return kept;
            }
            violations.add(OutOfRange.violation(
                    "line " + line + ", column " + column.column(),
                    column.meaning().label() + " (written " + written + " "
                            + column.unit().label() + ")",
                    Double.toString(kept),
                    min,
                    max,
                    ucum));
            return Double.NaN;
        }

        private double stepH() {
            // amounts belong to a step; the first two rows tell it
            if (stepH == 0) {
                stepH = 1;
                @Nullable Long first = second(firstDataLine, Delimited.split(lines.get(firstDataLine - 1), delimiter));
                @Nullable
                Long next = lines.size() > firstDataLine
                        ? second(firstDataLine + 1, Delimited.split(lines.get(firstDataLine), delimiter))
                        : null;
                if (first != null && next != null && next > first) {
                    stepH = (next - first) / 3600.0;
                }
            }
            return stepH;
        }

        private double written(int line, List<String> fields, WeatherColumn column) {
            int index = Objects.requireNonNull(at.get(column.meaning()));
            String text = index < fields.size() ? fields.get(index) : "";
            if (text.isEmpty() || missing.contains(text)) {
                return Double.NaN;
            }
            try {
                double number = Double.parseDouble(decimal == '.' ? text : text.replace(decimal, '.'));
                return isMissing(number) ? Double.NaN : number;
            } catch (NumberFormatException e) {
                violations.add(Violation.of(
                        "line " + line + ", column " + column.column(),
                        text,
                        "line " + line + ", column " + column.column() + ": \"" + text + "\" is no number"
                                + (decimal == '.' && text.indexOf(',') >= 0 ? "; is the decimal sign a comma?" : "."),
                        READING.printed()));
                return Double.NaN;
            }
        }

        private boolean isMissing(double number) {
            return Double.isNaN(number) || missingNumbers.contains(number);
        }

        /** From the first of vapour pressure, dew point, humidity ratio, relative humidity that the row has. */
        private double vapourPressurePa(int line, List<String> fields, double temperatureC) {
            double saturatedPa = MoistAir.saturationPressureOverWaterPa(temperatureC);
            double given = Double.NaN;
            double relative = Double.NaN;
            boolean fromDewPoint = false;
            for (WeatherColumn column : columns) {
                if (!column.meaning().isHumidity()) {
                    continue;
                }
                double value = value(line, fields, column);
                if (Double.isNaN(value)) {
                    continue;
                }
                switch (column.meaning()) {
                    case VAPOUR_PRESSURE -> given = value;
                    case DEW_POINT -> {
                        if (value > temperatureC + DEW_POINT_EXCESS_K || value < -90) {
                            checked(line, column, value, value, -90, temperatureC + DEW_POINT_EXCESS_K, "Cel");
                        } else {
                            given = Double.isNaN(given) ? MoistAir.saturationPressurePa(value, humidity) : given;
                            fromDewPoint = true;
                        }
                    }
                    case HUMIDITY_RATIO -> {
                        double ratio = checked(line, column, value, value, 0, 0.1, "kg/kg");
                        given = Double.isNaN(given)
                                ? MoistAir.vapourPressurePa(ratio, pressurePa(line, fields))
                                : given;
                    }
                    case RELATIVE_HUMIDITY ->
                        relative = checked(line, column, value, value, 0, MOST_HUMIDITY, "1")
                                * MoistAir.saturationPressurePa(temperatureC, humidity);
                    default -> throw new IllegalStateException(column.toString());
                }
            }
            if (fromDewPoint && Math.abs(relative - given) > HUMIDITY_MISFIT * saturatedPa) {
                misfits++;
            }
            double pressure = Double.isNaN(given) ? relative : given;
            if (pressure > saturatedPa) {
                supersaturated++;
                return saturatedPa;
            }
            return pressure;
        }

        private double pressurePa(int line, List<String> fields) {
            for (WeatherColumn column : columns) {
                if (column.meaning() == WeatherColumn.Meaning.AIR_PRESSURE) {
                    double pressure = value(line, fields, column);
                    return Double.isNaN(pressure) ? StandardAtmosphere.pressurePa(place.altitudeM()) : pressure;
                }
            }
            return StandardAtmosphere.pressurePa(place.altitudeM());
        }
    }
}
