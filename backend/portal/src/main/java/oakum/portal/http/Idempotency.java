package oakum.portal.http;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ReadListener;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletInputStream;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import jakarta.servlet.http.HttpServletResponse;
import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.Principal;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.util.ContentCachingResponseWrapper;

/**
 * A creating request that carries an {@code Idempotency-Key} is done once: sent again, it gets the same answer. Holds for
 * POST with a JSON body or none; files and readings recognise a repetition by their content. A refused request leaves its
 * key free. If the portal was killed before the act was committed, the key is free again after two minutes; if it was
 * killed between committing and keeping the answer, the key stays taken, because doing it again would do it twice.
 */
@Component
@Order(Ordered.LOWEST_PRECEDENCE - 10)
class Idempotency extends OncePerRequestFilter {
    static final String KEY = "Idempotency-Key";
    static final String REPLAYED = "Idempotency-Replayed";
    private static final Pattern KEY_FORM = Pattern.compile("[\\x21-\\x7e]{1,200}");
    /** Its answer holds a secret that is shown once and kept nowhere. */
    private static final String NEVER_KEPT = "/api/v1/tokens";

    private static final List<String> KEPT_HEADERS =
            List.of(HttpHeaders.CONTENT_TYPE, HttpHeaders.LOCATION, HttpHeaders.ETAG);

    private final KeptAnswers answers;
    private final ProblemWriter problems;

    Idempotency(KeptAnswers answers, ProblemWriter problems) {
        this.answers = answers;
        this.problems = problems;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        String key = request.getHeader(KEY);
        Principal person = request.getUserPrincipal();
        if (key == null
                || person == null
                || !request.getMethod().equals(HttpMethod.POST.name())
                || request.getRequestURI().equals(NEVER_KEPT)
                || !(request.getContentType() == null || JsonBodies.isJson(request))) {
            chain.doFilter(request, response);
            return;
        }
        if (!KEY_FORM.matcher(key).matches()) {
            problems.write(
                    response,
                    new Problem(
                            HttpStatus.BAD_REQUEST,
                            "idempotency-key-malformed",
                            "An Idempotency-Key has 1 to 200 visible ASCII characters."));
            return;
        }
        byte[] body;
        try {
            body = request.getInputStream().readAllBytes();
        } catch (BodyTooLarge e) {
            problems.write(response, ProblemAdvice.tooLarge(e.limitBytes()));
            return;
        }
        byte[] hash = hash(request, body);
        Optional<UUID> claim = answers.begin(person.getName(), key, hash);
        if (claim.isPresent()) {
            doOnce(claim.get(), new Buffered(request, body), response, chain);
        } else {
            again(person.getName(), key, hash, response);
        }
    }

    private void doOnce(UUID claim, HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        request.setAttribute(IdempotentAct.CLAIM, claim);
        ContentCachingResponseWrapper cached = new ContentCachingResponseWrapper(response);
        boolean kept = false;
        try {
            chain.doFilter(request, cached);
            if (HttpStatus.valueOf(cached.getStatus()).is2xxSuccessful()) {
                Map<String, String> headers = new LinkedHashMap<>();
                for (String name : KEPT_HEADERS) {
                    String value =
                            name.equals(HttpHeaders.CONTENT_TYPE) ? cached.getContentType() : cached.getHeader(name);
                    if (value != null) {
                        headers.put(name, value);
                    }
                }
                answers.keep(claim, cached.getStatus(), headers, cached.getContentAsByteArray());
                kept = true;
            }
        } finally {
            if (!kept) {
                answers.release(claim);
            }
        }
        cached.copyBodyToResponse();
    }

    private void again(String person, String key, byte[] hash, HttpServletResponse response) throws IOException {
        Optional<KeptAnswers.Kept> found = answers.find(person, key);
        if (found.isPresent() && !Arrays.equals(found.get().requestHash(), hash)) {
            problems.write(
                    response,
                    new Problem(
                            HttpStatus.UNPROCESSABLE_CONTENT,
                            "idempotency-key-reused",
                            "This Idempotency-Key was used for another request. Take a new key for each request."));
        } else if (found.isEmpty() || found.get().status() == null) {
            boolean acted = found.isPresent() && found.get().acted();
            problems.write(
                    response,
                    Problem.conflict(
                                    "idempotency-key-in-use",
                                    acted
                                            ? "The first request with this Idempotency-Key was done and its answer is not"
                                                    + " kept yet. If it stays so, the portal was stopped meanwhile: read"
                                                    + " what was made, and use a new key for anything else."
                                            : "The first request with this Idempotency-Key has no answer yet. If the portal"
                                                    + " was stopped before it did anything, the key is free again within"
                                                    + " two minutes.")
                            .header(HttpHeaders.RETRY_AFTER, "1"));
        } else {
            KeptAnswers.Kept kept = found.get();
            response.setStatus(Objects.requireNonNull(kept.status()));
            kept.headers().forEach(response::setHeader);
            response.setHeader(REPLAYED, "true");
            response.getOutputStream().write(kept.body());
        }
    }

    private static byte[] hash(HttpServletRequest request, byte[] body) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            String target = request.getMethod() + " " + request.getRequestURI() + "?" + request.getQueryString() + "\n";
            digest.update(target.getBytes(StandardCharsets.UTF_8));
            return digest.digest(body);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /** The request with its body read already. */
    private static final class Buffered extends HttpServletRequestWrapper {
        private final ServletInputStream stream;

        Buffered(HttpServletRequest request, byte[] body) {
            super(request);
            this.stream = new Bytes(new ByteArrayInputStream(body));
        }

        @Override
        public ServletInputStream getInputStream() {
            return stream;
        }

        @Override
        public BufferedReader getReader() {
            return new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8));
        }
    }

    private static final class Bytes extends ServletInputStream {
        private final ByteArrayInputStream bytes;

        Bytes(ByteArrayInputStream bytes) {
            this.bytes = bytes;
        }

        @Override
        public int read() {
            return bytes.read();
        }

        @Override
        public int read(byte[] buffer, int offset, int length) {
            return bytes.read(buffer, offset, length);
        }

        @Override
        public boolean isFinished() {
            return bytes.available() == 0;
        }

        @Override
        public boolean isReady() {
            return true;
        }

        @Override
        public void setReadListener(ReadListener listener) {
            throw new IllegalStateException("bodies are read where they are needed, not by listeners");
        }
    }
}
