package oakum.portal.site;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import oakum.physics.calculation.Unit;
import oakum.portal.people.Role;
import org.jspecify.annotations.Nullable;

/**
 * A cover check before a house has it; read from the two tables beside this class.
 *
 * @param code C9; on screen "cover check 9"
 * @param coveredBy what hides the work
 * @param dependsOn decisions whose approvals must not have lapsed
 */
record CoverCheckTemplate(
        String code,
        String title,
        String coveredBy,
        List<String> dependsOn,
        List<SafetyCaution> cautions,
        List<CheckRow> rows) {

    /** Every template by its code, in building order. */
    static final Map<String, CoverCheckTemplate> ALL = read();

    private static Map<String, CoverCheckTemplate> read() {
        Map<String, List<CheckRow>> rows = new LinkedHashMap<>();
        for (NamedCsvRecord line : table("cover-check-rows.csv")) {
            List<CheckRow> of = rows.computeIfAbsent(line.getField("check"), code -> new ArrayList<>());
            CheckRow row = row(line, of.size());
            List<String> places = list(line.getField("places"));
            if (places.isEmpty()) {
                of.add(row);
            } else {
                places.forEach(place -> of.add(row.at(place, of.size())));
            }
        }
        Map<String, CoverCheckTemplate> all = new LinkedHashMap<>();
        for (NamedCsvRecord line : table("cover-checks.csv")) {
            String code = line.getField("code");
            all.put(
                    code,
                    new CoverCheckTemplate(
                            code,
                            line.getField("title"),
                            line.getField("coveredBy"),
                            list(line.getField("dependsOn")),
                            list(line.getField("cautions")).stream()
                                    .map(SafetyCaution::valueOf)
                                    .toList(),
                            List.copyOf(rows.getOrDefault(code, List.of()))));
        }
        return all;
    }

    private static CheckRow row(NamedCsvRecord line, int position) {
        String id = line.getField("row");
        String unit = line.getField("unit");
        CheckRow.Asked number = unit.isEmpty()
                ? null
                : new CheckRow.Asked(
                        line.getField("quantity"),
                        Unit.valueOf(unit),
                        number(line.getField("min")),
                        number(line.getField("max")),
                        Double.parseDouble(line.getField("lowest")),
                        Double.parseDouble(line.getField("highest")));
        return new CheckRow(
                id,
                id,
                null,
                position,
                line.getField("lookAt"),
                line.getField("acceptWhen"),
                line.getField("because"),
                number,
                PhotoRule.valueOf(line.getField("photo")),
                list(line.getField("seenBy")).stream().map(SeenBy::valueOf).toList(),
                Role.valueOf(line.getField("signedBy")),
                line.getField("source"));
    }

    private static List<String> list(String cell) {
        return cell.isEmpty() ? List.of() : Stream.of(cell.split("\\|")).toList();
    }

    private static @Nullable Double number(String cell) {
        return cell.isEmpty() ? null : Double.valueOf(cell);
    }

    private static List<NamedCsvRecord> table(String name) {
        try (InputStream in = Objects.requireNonNull(CoverCheckTemplate.class.getResourceAsStream(name), name);
                CsvReader<NamedCsvRecord> lines =
                        CsvReader.builder().ofNamedCsvRecord(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            return lines.stream().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
