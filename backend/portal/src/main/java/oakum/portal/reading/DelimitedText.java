package oakum.portal.reading;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.Reader;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import oakum.portal.http.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;

/**
 * Reads a delimited table, either long ({@code sensor,at,value}) or wide (a time and one column for each sensor). What is
 * wrong with the whole file refuses it; what is wrong with a line refuses that line or that field of it.
 */
final class DelimitedText {
    private static final List<Character> DELIMITERS = List.of(',', ';', '\t');
    private static final Set<String> LONG = Set.of("sensor", "at", "value");
    private static final int LONGEST_HEADER = 1 << 16;
    private static final int LONGEST_TEXT = 300;

    private final TableForm form;
    private final Map<String, KnownSensor> sensors;
    private final Rows rows;
    private final Taking taking;

    DelimitedText(TableForm form, Map<String, KnownSensor> sensors, Rows rows, Clock clock) {
        this.form = form;
        this.sensors = sensors;
        this.rows = rows;
        this.taking = new Taking(rows, clock);
    }

    /**
     * Reads to the end.
     *
     * @throws Problem 400 where the file as a whole cannot be read
     */
    void read(Reader body) throws IOException {
        BufferedReader text = new BufferedReader(body, LONGEST_HEADER);
        char delimiter = delimiter(headerLine(text));
        CsvReader.CsvReaderBuilder builder = CsvReader.builder()
                .fieldSeparator(delimiter)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .allowUnclosedQuote(false)
                .trimWhitespacesAroundQuotes(true);
        try (CsvReader<CsvRecord> csv = builder.ofCsvRecord(text)) {
            Iterator<CsvRecord> records = csv.iterator();
            CsvRecord header = null;
            while (header == null && records.hasNext()) {
                CsvRecord candidate = records.next();
                header = candidate.getStartingLineNumber() >= form.headerLine() ? candidate : null;
            }
            if (header == null) {
                throw wrongHeader("The file ends before its header, line " + form.headerLine() + ".");
            }
            List<String> names = header.getFields().stream().map(String::strip).toList();
            Line lines = isLong(names) ? longLines(names) : wideLines(names);
            boolean first = true;
            while (records.hasNext()) {
                CsvRecord line = records.next();
                if (line.getFieldCount() == names.size()) {
                    lines.read(line);
                } else {
                    miscounted(line, names.size(), delimiter, first);
                }
                first = false;
            }
        }
    }

    /** What a line of this table means. */
    private interface Line {
        void read(CsvRecord line) throws IOException;
    }

    private String headerLine(BufferedReader text) throws IOException {
        text.mark(LONGEST_HEADER);
        StringBuilder line = new StringBuilder();
        int number = 1;
        for (int i = 0; i < LONGEST_HEADER; i++) {
            int c = text.read();
            if (c < 0 || (c == '\n' && number == form.headerLine())) {
                text.reset();
                return line.toString();
            }
            if (c == '\n') {
                number++;
                line.setLength(0);
            } else {
                line.append((char) c);
            }
        }
        throw wrongHeader("There is no header within the first " + LONGEST_HEADER + " characters.");
    }

    private char delimiter(String header) {
        if (form.delimiter() != null) {
            return form.delimiter();
        }
        List<Character> found =
                DELIMITERS.stream().filter(d -> holds(header, d)).toList();
        if (found.size() > 1) {
            throw mixed("The header holds "
                    + found.stream().map(DelimitedText::named).collect(Collectors.joining(" and "))
                    + "; say which one separates, delimiter=comma, semicolon or tab.");
        }
        return found.isEmpty() ? ',' : found.get(0);
    }

    private static boolean holds(String text, char delimiter) {
        boolean quoted = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '"') {
                quoted = !quoted;
            } else if (c == delimiter && !quoted) {
                return true;
            }
        }
        return false;
    }

    private void miscounted(CsvRecord line, int expected, char delimiter, boolean first) {
        String text = text(line);
        @Nullable
        Character other = DELIMITERS.stream()
                .filter(d -> d != delimiter && line.getFieldCount() < expected && holds(text, d))
                .findFirst()
                .orElse(null);
        if (first && other != null) {
            throw mixed("The header is separated by " + named(delimiter) + ", line " + line.getStartingLineNumber()
                    + " by " + named(other) + "; write the file with one separator.");
        }
        rows.refuse(
                line.getStartingLineNumber(),
                "",
                text,
                line.getFieldCount() + " fields where the header has " + expected
                        + (other == null
                                ? ""
                                : "; it holds " + named(other) + " where the header has " + named(delimiter)),
                text);
    }

    private boolean isLong(List<String> names) {
        return form.columns() == null
                && names.size() == LONG.size()
                && Set.copyOf(names).equals(LONG);
    }

    private Line longLines(List<String> names) {
        int sensorAt = names.indexOf("sensor");
        int timeAt = names.indexOf("at");
        int valueAt = names.indexOf("value");
        Map<String, TimeText.Order> orders = new HashMap<>();
        return line -> {
            String key = line.getField(sensorAt).strip();
            KnownSensor sensor = sensors.get(key);
            String field = "sensor";
            String value = key;
            try {
                if (sensor == null) {
                    throw new Unreadable("this house has no sensor of that key");
                }
                field = "at";
                value = line.getField(timeAt);
                Instant at = form.time().parse(value, orders.computeIfAbsent(key, k -> new TimeText.Order()));
                taking.check(at);
                field = "value";
                value = line.getField(valueAt);
                if (form.missing().contains(value.strip())) {
                    rows.empty();
                } else {
                    taking.take(
                            line.getStartingLineNumber(),
                            new TableForm.Target(sensor),
                            at,
                            form.number().parse(value));
                }
            } catch (Unreadable e) {
                rows.refuse(line.getStartingLineNumber(), field, value, e.reason(), text(line));
            }
        };
    }

    private Line wideLines(List<String> names) {
        List<String> timeColumns = form.timeColumns() == null ? List.of("at") : form.timeColumns();
        List<Integer> timeAt =
                timeColumns.stream().map(name -> place(names, name)).toList();
        TableForm.@Nullable Target[] targets = targets(names, timeAt);
        TimeText.Order order = new TimeText.Order();
        String timeField = String.join(" ", timeColumns);
        return line -> {
            String time = timeAt.size() == 1
                    ? line.getField(timeAt.get(0))
                    : timeAt.stream().map(i -> line.getField(i).strip()).collect(Collectors.joining(" "));
            Instant at;
            try {
                at = form.time().parse(time, order);
                taking.check(at);
            } catch (Unreadable e) {
                rows.refuse(line.getStartingLineNumber(), timeField, time, e.reason(), text(line));
                return;
            }
            for (int i = 0; i < targets.length; i++) {
                TableForm.Target target = targets[i];
                if (target != null) {
                    cell(line, names.get(i), line.getField(i), at, target);
                }
            }
        };
    }

    private void cell(CsvRecord line, String name, String value, Instant at, TableForm.Target target)
            throws IOException {
        String stripped = value.strip();
        if (stripped.isEmpty() || form.missing().contains(stripped)) {
            rows.empty();
            return;
        }
        try {
            taking.take(line.getStartingLineNumber(), target, at, form.number().parse(stripped));
        } catch (Unreadable e) {
            rows.refuse(line.getStartingLineNumber(), name, value, e.reason(), text(line));
        }
    }

    private TableForm.@Nullable Target[] targets(List<String> names, List<Integer> timeAt) {
        TableForm.@Nullable Target[] targets = new TableForm.@Nullable Target[names.size()];
        Map<String, TableForm.Target> mapped = form.columns();
        if (mapped != null) {
            mapped.forEach((name, target) -> targets[place(names, name)] = target);
            return targets;
        }
        List<String> unknown = new ArrayList<>();
        for (int i = 0; i < targets.length; i++) {
            if (!timeAt.contains(i)) {
                KnownSensor sensor = sensors.get(names.get(i));
                if (sensor == null) {
                    unknown.add(names.get(i));
                } else {
                    place(names, names.get(i));
                    targets[i] = new TableForm.Target(sensor);
                }
            }
        }
        if (!unknown.isEmpty() || targets.length == timeAt.size()) {
            throw wrongHeader("These columns are no sensors of this house: " + unknown
                    + ". Make the sensors, or send the file with map=, a column map that says where each column goes.");
        }
        return targets;
    }

    private int place(List<String> names, String name) {
        int at = names.indexOf(name);
        if (at < 0) {
            throw wrongHeader("The header, line " + form.headerLine() + ", has no column \"" + name + "\"; it has "
                    + names.stream().limit(100).toList() + ".");
        }
        if (at != names.lastIndexOf(name)) {
            throw wrongHeader("The header has the column \"" + name + "\" more than once.");
        }
        return at;
    }

    private static String text(CsvRecord line) {
        String text = String.join(",", line.getFields());
        return text.length() <= LONGEST_TEXT ? text : text.substring(0, LONGEST_TEXT) + "…";
    }

    private static String named(char delimiter) {
        return switch (delimiter) {
            case ',' -> "commas";
            case ';' -> "semicolons";
            default -> "tabs";
        };
    }

    private static Problem wrongHeader(String detail) {
        return new Problem(HttpStatus.BAD_REQUEST, "wrong-header", detail);
    }

    private static Problem mixed(String detail) {
        return new Problem(HttpStatus.BAD_REQUEST, "mixed-separators", detail);
    }
}
