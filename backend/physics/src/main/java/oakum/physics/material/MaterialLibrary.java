package oakum.physics.material;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Source;

/**
 * Generic materials without makers, read from two tables beside this class: {@code material-sources.csv} ({@code key;
 * status; citation}) and {@code materials.csv} ({@code material; property; value; source key}), one line a value. A curve
 * is written {@code 0.25:200 0.75:70}. Every material passes the same checks as one that a person types.
 */
public final class MaterialLibrary {
    private static final Map<String, Material> ALL = read("materials.csv", "material-sources.csv");

    private MaterialLibrary() {}

    /** Every material of the table, in its order; those of open shelves are found by their id only. */
    public static Collection<Material> all() {
        return ALL.values();
    }

    /** The material of the table, or of a shelf that is open in this process. */
    public static Optional<Material> find(String id) {
        return Optional.ofNullable(ALL.get(id)).or(() -> MaterialShelves.find(id));
    }

    /**
     * The material of a layer.
     *
     * @param field pointer to where the id stands
     * @throws Refused where neither the table nor an open shelf has one of that id
     */
    public static Material require(String field, String id) {
        return find(id).orElseThrow(() -> Refused.of(
                field,
                id,
                "The library has no material \"" + id + "\" (" + field + "); give one of its ids, or the values.",
                Source.commonPractice("material library")));
    }

    static Map<String, Material> read(String materialTable, String sourceTable) {
        Map<String, Source> sources = new LinkedHashMap<>();
        for (String[] cells : lines(sourceTable, 3)) {
            sources.put(cells[0], new Source(cells[2], Source.Status.valueOf(cells[1])));
        }
        Map<String, Draft> drafts = new LinkedHashMap<>();
        for (String[] cells : lines(materialTable, 4)) {
            Source source = sources.get(cells[3]);
            if (source == null) {
                throw new IllegalStateException(
                        materialTable + ": " + cells[0] + " names no known source: " + cells[3]);
            }
            drafts.computeIfAbsent(cells[0], Draft::new).add(cells[1], cells[2], source);
        }
        Map<String, Material> materials = new LinkedHashMap<>();
        drafts.forEach((id, draft) -> materials.put(id, draft.material()));
        return Collections.unmodifiableMap(materials);
    }

    private static List<String[]> lines(String table, int columns) {
        try (InputStream in = MaterialLibrary.class.getResourceAsStream(table)) {
            if (in == null) {
                throw new IllegalStateException(table + " is missing beside " + MaterialLibrary.class.getName());
            }
            return new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))
                    .lines()
                    .filter(line -> !line.isBlank() && !line.startsWith("#"))
                    .map(line -> cells(table, line, columns))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String[] cells(String table, String line, int columns) {
        String[] cells = line.split(";", columns);
        if (cells.length != columns) {
            throw new IllegalStateException(table + ": " + columns + " columns wanted: " + line);
        }
        for (int i = 0; i < columns; i++) {
            cells[i] = cells[i].strip();
        }
        return cells;
    }

    /** One material while its lines are read. */
    private static final class Draft {
        private final Map<String, String> leaves = new LinkedHashMap<>();
        private final Map<MaterialProperty, Source> sources = new EnumMap<>(MaterialProperty.class);

        Draft(String id) {
            leaves.put("id", id);
        }

        void add(String property, String value, Source source) {
            switch (property) {
                case "resistanceFactors" -> points(property, "resistanceFactor", value);
                case "diffusionThicknesses" -> points(property, "diffusionThicknessM", value);
                case "sorption" -> points(property, "waterFraction", value);
                default -> leaves.put(property, value);
            }
            if (property.equals("label")) {
                return;
            }
            MaterialProperty of = MaterialProperty.of(property)
                    .orElseThrow(() -> new IllegalStateException("materials.csv: no property " + property));
            sources.put(of, source);
            leaves.putIfAbsent("source", source.citation());
            leaves.putIfAbsent("status", source.status().name());
        }

        private void points(String list, String component, String curve) {
            int i = 0;
            for (String point : curve.split(" +")) {
                String[] pair = point.split(":");
                leaves.put(list + "[" + i + "].humidityFraction", pair[0]);
                leaves.put(list + "[" + i + "]." + component, pair[1]);
                i++;
            }
        }

        Material material() {
            return Material.of(Canonical.read(MaterialInput.class, leaves), sources);
        }
    }
}
