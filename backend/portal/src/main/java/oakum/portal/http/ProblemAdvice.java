package oakum.portal.http;

import jakarta.validation.ConstraintViolationException;
import java.io.IOException;
import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Violation;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessException;
import org.springframework.dao.OptimisticLockingFailureException;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.http.converter.HttpMessageNotReadableException;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.transaction.TransactionException;
import org.springframework.validation.FieldError;
import org.springframework.validation.method.ParameterErrors;
import org.springframework.validation.method.ParameterValidationResult;
import org.springframework.web.ErrorResponse;
import org.springframework.web.HttpMediaTypeNotAcceptableException;
import org.springframework.web.HttpMediaTypeNotSupportedException;
import org.springframework.web.HttpRequestMethodNotSupportedException;
import org.springframework.web.bind.MethodArgumentNotValidException;
import org.springframework.web.bind.MissingRequestValueException;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.RestControllerAdvice;
import org.springframework.web.context.request.async.AsyncRequestNotUsableException;
import org.springframework.web.method.annotation.HandlerMethodValidationException;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;
import org.springframework.web.multipart.MaxUploadSizeExceededException;
import org.springframework.web.multipart.MultipartException;
import org.springframework.web.servlet.resource.NoResourceFoundException;
import tools.jackson.core.JacksonException;

/**
 * Turns everything that goes wrong behind a request into problem JSON with a stable code and a sentence of our own: what
 * was refused, why, and the way on. Names of classes and statements of the database stay in the log.
 */
@RestControllerAdvice
class ProblemAdvice {
    private static final Logger LOG = LoggerFactory.getLogger(ProblemAdvice.class);
    private static final String RETRY_SECONDS = "5";
    /** The connection was there and broke: the commit may have been done, and only its answer be lost. */
    private static final Set<String> BROKEN_OFF = Set.of("08003", "08006", "08007", "57P01", "57P02", "57P04");

    @ExceptionHandler
    @Nullable
    ResponseEntity<Map<String, Object>> any(Exception e) {
        if (e instanceof AsyncRequestNotUsableException || isGoneClient(e)) {
            return null; // nobody is there to read an answer
        }
        return answer(problem(e));
    }

    private static ResponseEntity<Map<String, Object>> answer(Problem problem) {
        HttpHeaders headers = new HttpHeaders();
        problem.headers().forEach(headers::set);
        return ResponseEntity.status(problem.status())
                .headers(headers)
                .contentType(MediaType.APPLICATION_PROBLEM_JSON)
                .body(ProblemWriter.members(problem));
    }

    private static Problem problem(Throwable e) {
        if (e instanceof Problem problem) {
            return problem;
        }
        if (e instanceof Refused refused) {
            return outsideLimits(refused);
        }
        if (e instanceof HttpMessageNotReadableException unreadable) {
            return unreadable(unreadable);
        }
        if (e instanceof OptimisticLockingFailureException) {
            return new Problem(
                    HttpStatus.PRECONDITION_FAILED,
                    "changed-meanwhile",
                    "Not saved: somebody changed this since you read it. Read it again, then repeat your change.");
        }
        if (e instanceof DataAccessException || e instanceof TransactionException) {
            return database(e);
        }
        if (e instanceof AccessDeniedException) {
            return Problem.forbidden("You may not do this.");
        }
        Problem validation = validation(e);
        if (validation != null) {
            return validation;
        }
        Problem web = web(e);
        return web == null ? unexpected(e) : web;
    }

    private static Problem outsideLimits(Refused refused) {
        return new Problem(HttpStatus.UNPROCESSABLE_CONTENT, "outside-limits", sentences(refused))
                .with(
                        "errors",
                        refused.violations().stream().map(ProblemAdvice::error).toList());
    }

    private static String sentences(Refused refused) {
        return String.join(
                " ", refused.violations().stream().map(Violation::sentence).toList());
    }

    private static Map<String, @Nullable Object> error(Violation violation) {
        Map<String, @Nullable Object> error = new LinkedHashMap<>();
        error.put("field", violation.field());
        error.put("value", violation.value());
        error.put("min", violation.min());
        error.put("max", violation.max());
        error.put("unit", violation.unit());
        error.put("source", violation.source());
        error.put("detail", violation.sentence());
        return error;
    }

    private static Problem unreadable(HttpMessageNotReadableException e) {
        for (Throwable cause = e.getCause(); cause != null; cause = cause.getCause()) {
            if (cause instanceof BodyTooLarge tooLarge) {
                return tooLarge(tooLarge.limitBytes());
            }
        }
        if (e.getCause() instanceof JacksonException json) {
            return problem(MalformedBody.of(json));
        }
        return new Problem(HttpStatus.BAD_REQUEST, "malformed-body", "The body is missing or cannot be read.");
    }

    static Problem tooLarge(long limitBytes) {
        return new Problem(
                HttpStatus.CONTENT_TOO_LARGE,
                "body-too-large",
                "The body is larger than the " + limitBytes + " bytes that are taken here. Nothing of it was kept.");
    }

    /** What the database says, by its SQL state (PostgreSQL, appendix A), or that it is away. */
    private static Problem database(Throwable e) {
        String state = "";
        for (Throwable cause = e; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLException sql && sql.getSQLState() != null) {
                state = sql.getSQLState();
            }
        }
        Problem known = switch (state) {
            case "23505" ->
                Problem.conflict("already-there", "Not saved: there is one of that name or number already.");
            case "23503" ->
                Problem.conflict(
                        "reference-missing", "Not saved: something that this refers to is not there, or still in use.");
            case "22021", "22P05" ->
                new Problem(HttpStatus.BAD_REQUEST, "malformed-body", "A text holds a character that cannot be kept.");
            case "40001", "40P01", "55P03" ->
                Problem.conflict("try-again", "Not saved: two changes met. Try again.")
                        .header(HttpHeaders.RETRY_AFTER, "1");
            default -> null;
        };
        if (known != null) {
            return known;
        }
        if (state.startsWith("22") || state.startsWith("23")) {
            LOG.warn("a value reached the database that a rule of ours should have refused", e);
            return new Problem(
                    HttpStatus.UNPROCESSABLE_CONTENT, "outside-limits", "Not saved: a value is outside what is kept.");
        }
        // no state: no connection could be had; 08, 57P: it broke or the server goes down; 53: it has no room
        if (state.isEmpty() && !isConnection(e)) {
            return unexpected(e);
        }
        if (state.isEmpty() || state.startsWith("08") || state.startsWith("57P") || state.startsWith("53")) {
            LOG.error("the database is away", e);
            return BROKEN_OFF.contains(state)
                    ? brokenOff()
                    : away(
                            "The record cannot be reached at the moment. Nothing was saved; try again in a few seconds.");
        }
        return unexpected(e);
    }

    /** Where the act may have been done and only its answer be lost. */
    static Problem brokenOff() {
        return away("The connection to the record broke off. Whether this was saved is not certain: look in a few"
                + " seconds. Readings may simply be sent again.");
    }

    private static Problem away(String detail) {
        return new Problem(HttpStatus.SERVICE_UNAVAILABLE, "database-away", detail)
                .header(HttpHeaders.RETRY_AFTER, RETRY_SECONDS);
    }

    private static boolean isConnection(Throwable e) {
        for (Throwable cause = e; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLException
                    || cause instanceof org.springframework.dao.DataAccessResourceFailureException
                    || cause instanceof org.springframework.transaction.CannotCreateTransactionException) {
                return true;
            }
        }
        return false;
    }

    private static @Nullable Problem validation(Throwable e) {
        Set<String> sentences = new TreeSet<>();
        if (e instanceof MethodArgumentNotValidException invalid) {
            for (FieldError error : invalid.getBindingResult().getFieldErrors()) {
                sentences.add(error.getField() + " " + error.getDefaultMessage());
            }
        } else if (e instanceof HandlerMethodValidationException invalid) {
            for (ParameterValidationResult result : invalid.getParameterValidationResults()) {
                if (result instanceof ParameterErrors errors) {
                    errors.getFieldErrors()
                            .forEach(error -> sentences.add(error.getField() + " " + error.getDefaultMessage()));
                } else {
                    String name = result.getMethodParameter().getParameterName();
                    result.getResolvableErrors()
                            .forEach(error -> sentences.add(name + " " + error.getDefaultMessage()));
                }
            }
        } else if (e instanceof ConstraintViolationException invalid) {
            invalid.getConstraintViolations().forEach(v -> sentences.add(v.getPropertyPath() + " " + v.getMessage()));
        } else {
            return null;
        }
        List<Map<String, String>> errors = sentences.stream()
                .map(s -> Map.of("field", s.substring(0, s.indexOf(' ')), "detail", s + "."))
                .toList();
        return new Problem(
                        HttpStatus.UNPROCESSABLE_CONTENT,
                        "outside-limits",
                        sentences.isEmpty() ? "A value is not allowed." : String.join(". ", sentences) + ".")
                .with("errors", errors);
    }

    private static @Nullable Problem web(Throwable e) {
        if (e instanceof NoResourceFoundException) {
            return new Problem(HttpStatus.NOT_FOUND, "not-found", "There is nothing at this address.");
        }
        if (e instanceof HttpRequestMethodNotSupportedException method) {
            String allowed = String.join(
                    ", ",
                    method.getSupportedHttpMethods() == null
                            ? List.of()
                            : method.getSupportedHttpMethods().stream()
                                    .map(Object::toString)
                                    .sorted()
                                    .toList());
            return new Problem(
                            HttpStatus.METHOD_NOT_ALLOWED,
                            "method-not-allowed",
                            method.getMethod() + " is not possible here; possible: " + allowed + ".")
                    .header(HttpHeaders.ALLOW, allowed);
        }
        if (e instanceof HttpMediaTypeNotSupportedException media) {
            return new Problem(
                    HttpStatus.UNSUPPORTED_MEDIA_TYPE,
                    "media-type-not-supported",
                    "The Content-Type is missing or not taken here; taken: "
                            + MediaType.toString(media.getSupportedMediaTypes()) + ".");
        }
        if (e instanceof HttpMediaTypeNotAcceptableException) {
            return new Problem(
                    HttpStatus.NOT_ACCEPTABLE, "not-acceptable", "This cannot be answered in what Accept asks for.");
        }
        if (e instanceof MissingRequestValueException missing) {
            return new Problem(
                    HttpStatus.BAD_REQUEST,
                    "parameter-missing",
                    missing.getBody().getDetail() == null
                            ? "A parameter is missing."
                            : missing.getBody().getDetail());
        }
        if (e instanceof MethodArgumentTypeMismatchException mismatch) {
            return new Problem(
                            HttpStatus.BAD_REQUEST,
                            "parameter-malformed",
                            mismatch.getName() + " must be " + MalformedBody.expected(mismatch.getRequiredType()) + ".")
                    .with("field", mismatch.getName());
        }
        if (e instanceof MaxUploadSizeExceededException upload) {
            return upload.getMaxUploadSize() > 0
                    ? tooLarge(upload.getMaxUploadSize())
                    : new Problem(
                            HttpStatus.CONTENT_TOO_LARGE,
                            "body-too-large",
                            "The file is larger than what is taken here. Nothing of it was kept.");
        }
        if (e instanceof MultipartException) {
            return new Problem(
                    HttpStatus.BAD_REQUEST, "malformed-body", "The form with the file is cut off or cannot be read.");
        }
        if (e instanceof ErrorResponse response && response.getStatusCode().is4xxClientError()) {
            HttpStatus status = HttpStatus.valueOf(response.getStatusCode().value());
            return new Problem(
                    status,
                    "request-refused",
                    "The request cannot be taken as it is: " + ProblemWriter.title(status) + ".");
        }
        return null;
    }

    private static boolean isGoneClient(Throwable e) {
        return e instanceof IOException && e.getClass().getSimpleName().equals("ClientAbortException");
    }

    private static Problem unexpected(Throwable e) {
        String mark = Long.toHexString(System.nanoTime() & 0xffffff);
        LOG.error("unexpected, mark {}", mark, e);
        return new Problem(
                HttpStatus.INTERNAL_SERVER_ERROR,
                "unexpected",
                "Something went wrong in the portal; it stands in its log under the mark " + mark + ".");
    }
}
