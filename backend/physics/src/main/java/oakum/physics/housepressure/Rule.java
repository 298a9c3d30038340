package oakum.physics.housepressure;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import oakum.physics.calculation.Source;
import org.jspecify.annotations.Nullable;

/**
 * A limit or a rule that some place or body has written: a choice for a house, never "the code here".
 *
 * @param id kebab case, unique
 * @param kind what it is about
 * @param title one line
 * @param value its number in SI units, or null where it has none
 * @param unit of the number, in UCUM
 * @param edition which edition
 * @param place where it is adopted, or what kind of body wrote it
 * @param text what it says, in our words
 * @param source the citation with how well it was seen
 */
public record Rule(
        String id,
        RuleKind kind,
        String title,
        @Nullable Double value,
        String unit,
        String edition,
        String place,
        String text,
        Source source) {

    private static final int COLUMNS = 10;

    private static final List<Rule> ALL = read();

    /** Every rule, in the order of the table. */
    public static List<Rule> all() {
        return ALL;
    }

    public static List<Rule> of(RuleKind kind) {
        return ALL.stream().filter(rule -> rule.kind() == kind).toList();
    }

    public static Optional<Rule> find(String id) {
        return ALL.stream().filter(rule -> rule.id().equals(id)).findFirst();
    }

    private static List<Rule> read() {
        try (InputStream in = Rule.class.getResourceAsStream("rules.csv")) {
            if (in == null) {
                throw new IllegalStateException("rules.csv is missing beside " + Rule.class.getName());
            }
            return new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))
                    .lines()
                    .filter(line -> !line.isBlank() && !line.startsWith("#"))
                    .skip(1)
                    .map(Rule::parse)
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Rule parse(String line) {
        String[] cells = line.split(";", -1);
        if (cells.length != COLUMNS) {
            throw new IllegalStateException(
                    "rules.csv: " + cells.length + " columns instead of " + COLUMNS + ": " + line);
        }
        return new Rule(
                cells[0],
                RuleKind.valueOf(cells[1]),
                cells[2],
                cells[3].isEmpty() ? null : Double.valueOf(cells[3]),
                cells[4],
                cells[5],
                cells[6],
                cells[7],
                new Source(cells[9], Source.Status.valueOf(cells[8])));
    }
}
