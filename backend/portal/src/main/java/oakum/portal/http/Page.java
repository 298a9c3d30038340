package oakum.portal.http;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One page of a list.
 *
 * @param items in the list's order
 * @param next cursor for the following page, null on the last
 */
public record Page<T>(List<T> items, @Nullable String next) {}
