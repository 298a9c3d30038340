package oakum.portal.http;

import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;

/** Versions as entity tags (RFC 9110): a change names the version it was made from, or is refused. */
public final class EntityTag {
    private EntityTag() {}

    /** The tag of a version. */
    public static String of(long version) {
        return "\"" + version + "\"";
    }

    /**
     * Lets a change through only when it was made from the present version.
     *
     * @param ifMatch the request's {@code If-Match} header
     * @param version the present version
     * @throws Problem 428 without the header, 412 when it names another version
     */
    public static void require(@Nullable String ifMatch, long version) {
        if (ifMatch == null || ifMatch.isBlank()) {
            throw new Problem(
                    HttpStatus.PRECONDITION_REQUIRED,
                    "if-match-missing",
                    "A change needs the header If-Match with the ETag of what you read.");
        }
        if (!ifMatch.strip().equals(of(version))) {
            throw new Problem(
                            HttpStatus.PRECONDITION_FAILED,
                            "changed-meanwhile",
                            "Not saved: somebody changed this since you read it. Read it again, then repeat your change.")
                    .with("currentETag", of(version));
        }
    }
}
