package oakum.portal.http;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ReadListener;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletInputStream;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import jakarta.servlet.http.HttpServletResponse;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/** Stops a JSON body at its limit. Files and readings have limits of their own. */
@Component
@Order(Ordered.LOWEST_PRECEDENCE - 20)
class JsonBodies extends OncePerRequestFilter {
    static final long LIMIT_BYTES = 2L << 20;

    private final ProblemWriter problems;

    JsonBodies(ProblemWriter problems) {
        this.problems = problems;
    }

    static boolean isJson(HttpServletRequest request) {
        String type = request.getContentType();
        return type != null && type.toLowerCase(Locale.ROOT).startsWith(MediaType.APPLICATION_JSON_VALUE);
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        if (!isJson(request)) {
            chain.doFilter(request, response);
        } else if (request.getContentLengthLong() > LIMIT_BYTES) {
            problems.write(response, ProblemAdvice.tooLarge(LIMIT_BYTES));
        } else {
            chain.doFilter(new Limited(request), response);
        }
    }

    private static final class Limited extends HttpServletRequestWrapper {
        private @Nullable ServletInputStream stream;

        Limited(HttpServletRequest request) {
            super(request);
        }

        @Override
        public ServletInputStream getInputStream() throws IOException {
            ServletInputStream opened = stream;
            if (opened == null) {
                opened = new Counted(super.getInputStream());
                stream = opened;
            }
            return opened;
        }

        @Override
        public BufferedReader getReader() throws IOException {
            return new BufferedReader(new InputStreamReader(getInputStream(), StandardCharsets.UTF_8));
        }
    }

    private static final class Counted extends ServletInputStream {
        private final ServletInputStream inner;
        private long bytes;

        Counted(ServletInputStream inner) {
            this.inner = inner;
        }

        private int count(int read) throws BodyTooLarge {
            if (read > 0) {
                bytes += read;
                if (bytes > LIMIT_BYTES) {
                    throw new BodyTooLarge(LIMIT_BYTES);
                }
            }
            return read;
        }

        @Override
        public int read() throws IOException {
            int next = inner.read();
            count(next < 0 ? -1 : 1);
            return next;
        }

        @Override
        public int read(byte[] buffer, int offset, int length) throws IOException {
            return count(inner.read(buffer, offset, length));
        }

        @Override
        public boolean isFinished() {
            return inner.isFinished();
        }

        @Override
        public boolean isReady() {
            return inner.isReady();
        }

        @Override
        public void setReadListener(ReadListener listener) {
            inner.setReadListener(listener);
        }
    }
}
