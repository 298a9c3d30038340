package oakum.portal.decision;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import oakum.portal.people.Role;

/** The usual decisions of a house and how they touch each other, from {@code kinds.csv} and {@code arrows.csv}. */
final class DecisionTable {
    static final List<DecisionKind> KINDS = read("kinds.csv", DecisionTable::kind);
    static final List<Arrow> ARROWS = read("arrows.csv", DecisionTable::arrow);

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

    private static Arrow arrow(NamedCsvRecord row) {
        return new Arrow(
                row.getField("from"),
                row.getField("to"),
                row.getField("kind").equals("hard"),
                row.getField("because"),
                row.getField("trigger"));
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
