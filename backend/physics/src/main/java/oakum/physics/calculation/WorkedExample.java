package oakum.physics.calculation;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A published or independently computed example of a calculation, kept in {@code <calculation id>.worked.csv} beside the
 * class. Each line: example; in, out or about; pointer; value; tolerance ({@code rel 1e-4}, {@code abs 0.01} or
 * {@code exact}; out only). The lines {@code about} give {@code title}, {@code source} and {@code status} ("seen", "from
 * memory", "computed independently").
 *
 * @param id short name within the calculation
 * @param title what it shows
 * @param source citation with page or table
 * @param status how well the source was seen
 * @param inputs pointer to canonical text
 * @param expected what must come out
 */
public record WorkedExample(
        String id, String title, String source, String status, Map<String, String> inputs, List<Expected> expected) {

    /**
     * One expected value.
     *
     * @param pointer into the output
     * @param value the expected text
     * @param tolerance "rel 1e-4", "abs 0.01" or "exact"
     */
    public record Expected(String pointer, String value, String tolerance) {
        /** Whether an actual canonical text agrees within the tolerance. */
        public boolean agrees(String actual) {
            if (tolerance.equals("exact")) {
                return actual.equals(value);
            }
            double expected = Double.parseDouble(value);
            double allowed = Double.parseDouble(tolerance.substring(4));
            double difference = Math.abs(Double.parseDouble(actual) - expected);
            return tolerance.startsWith("rel ") ? difference <= allowed * Math.abs(expected) : difference <= allowed;
        }
    }

    /** The examples of one calculation; empty where the file is absent. */
    static List<WorkedExample> of(Class<?> beside, String calculationId) {
        try (InputStream in = beside.getResourceAsStream(calculationId + ".worked.csv")) {
            return in == null ? List.of() : parse(calculationId, in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<WorkedExample> parse(String calculationId, InputStream in) throws IOException {
        Map<String, Draft> drafts = new LinkedHashMap<>();
        var reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
        int number = 0;
        for (String line = reader.readLine(); line != null; line = reader.readLine()) {
            number++;
            if (line.isBlank() || line.startsWith("#")) {
                continue;
            }
            String[] cells = line.split(";", -1);
            if (cells.length < 4) {
                throw new IllegalStateException(calculationId + ".worked.csv line " + number + ": " + line);
            }
            Draft draft = drafts.computeIfAbsent(cells[0].strip(), Draft::new);
            draft.add(cells[1].strip(), cells[2].strip(), cells[3].strip(), cells.length > 4 ? cells[4].strip() : "");
        }
        return drafts.values().stream().map(Draft::done).toList();
    }

    private static final class Draft {
        private final String id;
        private final Map<String, String> about = new LinkedHashMap<>();
        private final Map<String, String> inputs = new LinkedHashMap<>();
        private final List<Expected> expected = new ArrayList<>();

        Draft(String id) {
            this.id = id;
        }

        void add(String part, String pointer, String value, String tolerance) {
            switch (part) {
                case "about" -> about.put(pointer, value);
                case "in" -> inputs.put(pointer, value);
                case "out" -> expected.add(new Expected(pointer, value, tolerance));
                default -> throw new IllegalStateException("a worked example has in, out and about, not " + part);
            }
        }

        WorkedExample done() {
            return new WorkedExample(
                    id,
                    about.getOrDefault("title", id),
                    about.getOrDefault("source", ""),
                    about.getOrDefault("status", ""),
                    Map.copyOf(inputs).isEmpty() ? Map.of() : new LinkedHashMap<>(inputs),
                    List.copyOf(expected));
        }
    }
}
