package oakum.portal.http;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import org.springframework.http.HttpStatus;

/**
 * A refusal that a client can act on; answered as RFC 9457 problem JSON. Every code stands on the errors page of the
 * docs.
 */
public final class Problem extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final HttpStatus status;
    private final String code;
    private final transient Map<String, Object> properties = new LinkedHashMap<>();
    private final transient Map<String, String> headers = new LinkedHashMap<>();

    /**
     * A problem.
     *
     * @param status the HTTP status
     * @param code stable, in kebab case
     * @param detail the whole sentence: what was refused, why, and the way on
     */
    public Problem(HttpStatus status, String code, String detail) {
        super(detail);
        this.status = status;
        this.code = code;
    }

    /** Nothing of that name that this person may see. */
    public static Problem notFound(String what, Object id) {
        return new Problem(
                HttpStatus.NOT_FOUND, "not-found", "There is no " + what + " \"" + id + "\" that you may see.");
    }

    /** A body or parameter that cannot be read; names the field, empty for the whole. */
    public static Problem malformed(String field, String detail) {
        Problem problem = new Problem(HttpStatus.BAD_REQUEST, "malformed-body", detail);
        return field.isEmpty() ? problem : problem.with("field", field);
    }

    /** Signed in, but not allowed. */
    public static Problem forbidden(String detail) {
        return new Problem(HttpStatus.FORBIDDEN, "not-allowed", detail);
    }

    /** A value that breaks a rule; names the field. */
    public static Problem unprocessable(String code, String field, String detail) {
        return new Problem(HttpStatus.UNPROCESSABLE_CONTENT, code, detail).with("field", field);
    }

    /** Right in itself, but not in the state that things are in now. */
    public static Problem conflict(String code, String detail) {
        return new Problem(HttpStatus.CONFLICT, code, detail);
    }

    /** Adds a member to the problem JSON. */
    public Problem with(String name, Object value) {
        properties.put(name, value);
        return this;
    }

    /** Adds a header to the answer, such as {@code Retry-After}. */
    public Problem header(String name, String value) {
        headers.put(name, value);
        return this;
    }

    public HttpStatus status() {
        return status;
    }

    public String code() {
        return code;
    }

    /** The whole sentence. */
    public String detail() {
        return Objects.requireNonNull(getMessage());
    }

    public Map<String, Object> properties() {
        return Collections.unmodifiableMap(properties);
    }

    public Map<String, String> headers() {
        return Collections.unmodifiableMap(headers);
    }
}
