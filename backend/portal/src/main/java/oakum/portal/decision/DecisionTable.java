package oakum.portal.decision;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import oakum.portal.people.Role;
import org.jspecify.annotations.Nullable;

/**
 * The usual decisions of a house and how they touch each other, from {@code kinds.csv}, {@code arrows.csv}
 * and {@code triggers.csv}.
 */
final class DecisionTable {
    static final List<DecisionKind> KINDS = read("kinds.csv", DecisionTable::kind);
    static final List<Arrow> ARROWS = arrows();

    private DecisionTable() {}

    static Optional<DecisionKind> kind(String code) {
        return KINDS.stream().filter(kind -> kind.code().equals(code)).findFirst();
    }

    static List<Arrow> into(String code) {
        return ARROWS.stream().filter(arrow -> arrow.to().equals(code)).toList();
    }

    static List<Arrow> from(String code) {
        return ARROWS.stream().filter(arrow -> arrow.from().equals(code)).toList();
    }

    private static DecisionKind kind(NamedCsvRecord row) {
        return new DecisionKind(
                row.getField("code"),
                row.getField("title"),
                row.getField("usual alternatives"),
                row.getField("proof it needs"),
                row.getField("group"),
                Arrays.stream(row.getField("approvers").split(" "))
                        .map(Role::valueOf)
                        .toList(),
                Arrays.stream(row.getField("outside approvers").split("; "))
                        .filter(name -> !name.isEmpty())
                        .toList(),
                row.getField("safety list").equals("yes"));
    }

    private static List<Arrow> arrows() {
        Map<String, List<Trigger>> triggers = new LinkedHashMap<>();
        read(
                "triggers.csv",
                row -> triggers.computeIfAbsent(ends(row), ends -> new ArrayList<>())
                        .add(trigger(row)));
        List<Arrow> arrows = read(
                "arrows.csv",
                row -> new Arrow(
                        row.getField("from"),
                        row.getField("to"),
                        row.getField("kind").equals("hard"),
                        row.getField("because"),
                        row.getField("changes"),
                        List.copyOf(Objects.requireNonNullElse(triggers.remove(ends(row)), List.of()))));
        if (!triggers.isEmpty()) {
            throw new IllegalStateException(
                    "triggers.csv names arrows that are not in arrows.csv: " + triggers.keySet());
        }
        return arrows;
    }

    private static String ends(NamedCsvRecord row) {
        return row.getField("from") + " → " + row.getField("to");
    }

    private static Trigger trigger(NamedCsvRecord row) {
        return new Trigger(
                row.getField("path"),
                row.getField("what"),
                number(row.getField("fall")),
                number(row.getField("rise")),
                number(row.getField("above")),
                row.getField("unit"),
                row.getField("bound").equals("at"));
    }

    private static @Nullable Double number(String field) {
        return field.isEmpty() ? null : Double.valueOf(field);
    }

    private static <T> List<T> read(String file, Function<NamedCsvRecord, T> row) {
        try (var in = Objects.requireNonNull(DecisionTable.class.getResourceAsStream(file), file);
                var csv = CsvReader.builder().ofNamedCsvRecord(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            return csv.stream().map(row).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
