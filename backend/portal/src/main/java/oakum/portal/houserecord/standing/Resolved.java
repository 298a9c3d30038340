package oakum.portal.houserecord.standing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import oakum.physics.calculation.Field;
import org.jspecify.annotations.Nullable;

/**
 * The inputs of a proof, drawn from values by its bindings.
 *
 * @param inputs pointer into the input record to text
 * @param relied which of them came from the record, and from where
 */
public record Resolved(Map<String, String> inputs, List<Relied> relied) {
    private static final Pattern ROW = Pattern.compile("\\[[^]]*]");
    private static final Pattern LAST_NAME = Pattern.compile("(?<=^|[.\\]])\\.?([A-Za-z0-9]+)$");

    /**
     * Draws the inputs.
     *
     * @param fields the declared inputs of the calculation; empty for submitted evidence, whose inputs are free names
     * @param values every value of the record and every result, by path
     */
    public static Resolved of(List<Binding> bindings, List<Field> fields, Map<String, String> values) {
        Drawing drawing = new Drawing(leaves(fields), values);
        bindings.forEach(drawing::draw);
        return new Resolved(drawing.inputs, List.copyOf(drawing.relied.values()));
    }

    /** The pointers of all declared leaves, with {@code [*]} for a row. */
    public static Set<String> leaves(List<Field> fields) {
        Set<String> leaves = new LinkedHashSet<>();
        leaves("", fields, leaves);
        return leaves;
    }

    private static void leaves(String prefix, List<Field> fields, Set<String> leaves) {
        for (Field field : fields) {
            String pointer = prefix + field.name();
            switch (field.kind()) {
                case GROUP -> leaves(pointer + ".", field.fields(), leaves);
                case ROWS -> leaves(pointer + "[*].", field.fields(), leaves);
                case NUMBERS -> leaves.add(pointer + "[*]");
                default -> leaves.add(pointer);
            }
        }
    }

    /** A pointer with {@code [*]} for each row: what it is declared as. */
    public static String pattern(String pointer) {
        return ROW.matcher(pointer).replaceAll("[*]");
    }

    private static final class Drawing {
        private final Set<String> declared;
        private final Map<String, String> values;
        private final Map<String, String> inputs = new LinkedHashMap<>();
        private final Map<String, Relied> relied = new LinkedHashMap<>();

        Drawing(Set<String> declared, Map<String, String> values) {
            this.declared = declared;
            this.values = values;
        }

        void draw(Binding binding) {
            String path = binding.path();
            if (path != null) {
                fromRecord(binding, path);
            } else if (binding.value() != null) {
                typed(binding.input(), binding.value());
            }
        }

        private void fromRecord(Binding binding, String path) {
            String exact = values.get(path);
            if (exact != null) {
                put(binding.input(), path, exact);
                return;
            }
            Pattern wanted =
                    Pattern.compile(Pattern.quote(path).replace("[*]", "\\E\\[([^]]*)]\\Q") + "(?<rest>[.\\[].*)?");
            values.forEach((at, value) -> {
                Matcher matcher = wanted.matcher(at);
                if (matcher.matches()) {
                    String rest = matcher.group("rest");
                    String input = renamed(binding, withRows(binding.input(), matcher) + (rest == null ? "" : rest));
                    if (input != null && (declared.isEmpty() || declared.contains(pattern(input)))) {
                        put(input, at, value);
                    }
                }
            });
        }

        private static String withRows(String input, Matcher matcher) {
            String filled = input;
            for (int i = 1; i < matcher.groupCount(); i++) {
                filled = filled.replaceFirst(
                        Pattern.quote("[*]"), Matcher.quoteReplacement("[" + matcher.group(i) + "]"));
            }
            return filled;
        }

        /** The input's pointer where the record uses another name; null where that name of the input is filled otherwise. */
        private static @Nullable String renamed(Binding binding, String pointer) {
            Matcher last = LAST_NAME.matcher(pointer);
            if (binding.fields().isEmpty() || !last.find()) {
                return pointer;
            }
            String name = last.group(1);
            for (Map.Entry<String, String> field : binding.fields().entrySet()) {
                if (field.getValue().equals(name)) {
                    return pointer.substring(0, last.start(1)) + field.getKey();
                }
            }
            return binding.fields().containsKey(name) ? null : pointer;
        }

        private void typed(String input, String value) {
            if (!input.contains("[*]")) {
                if (rowIsThere(input)) {
                    inputs.put(input, value);
                    relied.remove(input);
                }
                return;
            }
            String list = input.substring(0, input.indexOf("[*]"));
            String rest = input.substring(input.indexOf("[*]") + 3);
            Set<String> rows = new LinkedHashSet<>();
            for (String pointer : inputs.keySet()) {
                if (pointer.startsWith(list + "[")) {
                    rows.add(pointer.substring(0, pointer.indexOf(']', list.length()) + 1));
                }
            }
            for (String row : rows) {
                typed(row + rest, value);
            }
        }

        /** A typed value never calls a row into being that the record does not have (any more). */
        private boolean rowIsThere(String input) {
            int end = input.lastIndexOf(']');
            if (end < 0) {
                return true;
            }
            String row = input.substring(0, end + 1);
            boolean rowsHaveNames = declared.contains(pattern(row) + ".id");
            return !rowsHaveNames || input.equals(row + ".id") || inputs.containsKey(row + ".id");
        }

        private void put(String input, String path, String value) {
            inputs.put(input, value);
            relied.put(input, new Relied(path, input, value));
        }
    }

    /** The differences between what was relied on and what the same bindings draw now. */
    public static List<Difference> differences(List<Relied> then, List<Relied> now) {
        Map<String, Relied> left = new LinkedHashMap<>();
        then.forEach(relied -> left.put(relied.input(), relied));
        List<Difference> differences = new ArrayList<>();
        for (Relied relied : now) {
            Relied before = left.remove(relied.input());
            if (before == null) {
                differences.add(new Difference(relied.path(), relied.input(), null, relied.value()));
            } else if (!before.value().equals(relied.value())) {
                differences.add(new Difference(relied.path(), relied.input(), before.value(), relied.value()));
            }
        }
        left.values().forEach(gone -> differences.add(new Difference(gone.path(), gone.input(), gone.value(), null)));
        return differences;
    }
}
