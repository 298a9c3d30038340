package oakum.physics.material;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Violation;

/**
 * A firm's own material. Its id is {@code own-<short name>@} and 8 hex digits of the SHA-256 of the canonical text of what
 * was typed: whoever names it always means the same values, and a changed data sheet is another material.
 *
 * @param typed what was typed, its id the bare short name
 * @param material the same under its id
 */
public record OwnMaterial(MaterialInput typed, Material material) {
    private static final String PREFIX = "own-";
    private static final int HASH_DIGITS = 8;
    private static final String NAME = "[a-z0-9](?:[a-z0-9-]{0,45}[a-z0-9])?";
    private static final Pattern IS_NAME = Pattern.compile(NAME);
    private static final Pattern IS_ID = Pattern.compile(PREFIX + NAME + "@[0-9a-f]{" + HASH_DIGITS + "}");

    /**
     * An own material out of what a person typed.
     *
     * @param typed its id a short name of 1 to 47 small letters, digits and hyphens, with or without {@code own-}
     * @throws Refused naming the material, the value and what is wrong with it, also where no property is given or the
     *     source is left empty
     */
    public static OwnMaterial of(MaterialInput typed) {
        List<Violation> found = new ArrayList<>();
        String name = typed.id().startsWith(PREFIX) ? typed.id().substring(PREFIX.length()) : typed.id();
        if (!IS_NAME.matcher(name).matches()) {
            found.add(Violation.of(
                    "id",
                    typed.id(),
                    "Short name (id) = \"" + typed.id() + "\": take 1 to 47 small letters, digits and hyphens.",
                    ""));
        }
        blank("label", "Name", typed.label(), typed, found);
        blank("source", "Source of the values", typed.source(), typed, found);
        if (!found.isEmpty()) {
            throw new Refused(found);
        }
        MaterialInput bare = withId(typed, name);
        Material checked = Material.of(bare);
        if (Arrays.stream(MaterialProperty.values()).noneMatch(checked::knows)) {
            throw new Refused(Violation.of(
                    "", "", "Material \"" + typed.label() + "\": give at least one property of the material.", ""));
        }
        String content = Canonical.hash(Canonical.lines(bare)).substring(0, HASH_DIGITS);
        return new OwnMaterial(bare, Material.of(withId(bare, PREFIX + name + "@" + content)));
    }

    private static void blank(String field, String label, String text, MaterialInput typed, List<Violation> found) {
        if (text.isBlank()) {
            found.add(Violation.of(
                    field,
                    text,
                    "Material \"" + typed.id() + "\": " + label + " (" + field + ") must not be empty.",
                    ""));
        }
    }

    /** Whether a text has the form of an own material's id. */
    public static boolean isId(String id) {
        return IS_ID.matcher(id).matches();
    }

    /** What was typed for a material with an own id. */
    static MaterialInput typed(Material material) {
        String id = material.id();
        return isId(id) ? withId(material.values(), id.substring(PREFIX.length(), id.indexOf('@'))) : material.values();
    }

    /** Its short name; a later material of the same name takes its place in what is offered. */
    public String name() {
        return typed.id();
    }

    private static MaterialInput withId(MaterialInput values, String id) {
        Map<String, String> leaves = new LinkedHashMap<>(Canonical.flatten(values));
        leaves.put("id", id);
        return Canonical.read(MaterialInput.class, leaves);
    }
}
