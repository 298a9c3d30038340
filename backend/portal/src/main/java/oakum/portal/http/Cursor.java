package oakum.portal.http;

import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.util.Base64;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;

/**
 * Where a list goes on. To the client it is opaque; inside it is the sort key of the last item, so that a page stays
 * right when items are added meanwhile.
 */
public final class Cursor {
    private Cursor() {}

    /** The cursor after a sort key. */
    public static String after(String sortKey) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(sortKey.getBytes(StandardCharsets.UTF_8));
    }

    /**
     * The sort key that a cursor stands for; null for the first page.
     *
     * @throws Problem 400 where it is no cursor of ours
     */
    public static @Nullable String sortKey(@Nullable String cursor) {
        if (cursor == null || cursor.isEmpty()) {
            return null;
        }
        try {
            return new String(Base64.getUrlDecoder().decode(cursor), StandardCharsets.UTF_8);
        } catch (IllegalArgumentException e) {
            throw malformed();
        }
    }

    /** The same where the sort key is a whole number; 0 for the first page. */
    public static long number(@Nullable String cursor) {
        String key = sortKey(cursor);
        try {
            return key == null ? 0 : Long.parseLong(key);
        } catch (NumberFormatException e) {
            throw malformed();
        }
    }

    /** A sort key of several parts, none of which has a line end. */
    public static String join(String... parts) {
        return String.join("\n", parts);
    }

    /**
     * The sort key of several parts that a cursor stands for; null for the first page.
     *
     * @param count how many parts the list's sort key has
     * @param read makes the key of its parts; throws where a part is none of this list
     * @throws Problem 400 where it is no cursor of this list
     */
    public static <K> @Nullable K key(@Nullable String cursor, int count, Function<List<String>, K> read) {
        String key = sortKey(cursor);
        if (key == null) {
            return null;
        }
        List<String> parts = List.of(key.split("\n", -1));
        if (parts.size() != count) {
            throw malformed();
        }
        try {
            return read.apply(parts);
        } catch (IllegalArgumentException | DateTimeException e) {
            throw malformed();
        }
    }

    /**
     * A page out of one item more than the page holds.
     *
     * @param items at most {@code size + 1}, in order
     * @param size the page's size
     * @param sortKey the sort key of an item
     */
    public static <T> Page<T> page(List<T> items, int size, Function<T, String> sortKey) {
        if (items.size() <= size) {
            return new Page<>(items, null);
        }
        List<T> shown = items.subList(0, size);
        return new Page<>(List.copyOf(shown), after(sortKey.apply(shown.get(size - 1))));
    }

    private static Problem malformed() {
        return new Problem(
                        HttpStatus.BAD_REQUEST,
                        "parameter-malformed",
                        "This is no cursor of this list; take the one that the last page gave as next.")
                .with("field", "cursor");
    }
}
