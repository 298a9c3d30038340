package oakum.portal;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.CookieManager;
import java.net.HttpCookie;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.function.Function;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Speaks with a portal in another process as the web client does: a session cookie, and a header against forgery. */
final class PortalClient {
    private final CookieManager cookies;
    private final HttpClient http;
    private final Function<String, URI> uri;

    private PortalClient(CookieManager cookies, Function<String, URI> uri) {
        this.cookies = cookies;
        this.uri = uri;
        this.http = HttpClient.newBuilder()
                .version(HttpClient.Version.HTTP_1_1)
                .cookieHandler(cookies)
                .build();
    }

    /** Signs the first principal in. */
    static PortalClient signIn(PortalProcess portal) {
        return signIn(portal, "principal", PortalProcess.PASSWORD);
    }

    static PortalClient signIn(PortalProcess portal, String account, String password) {
        PortalClient client = new PortalClient(new CookieManager(), portal::uri);
        Answer answer = client.send(
                "POST",
                "/api/v1/session",
                json("{\"account\":\"" + account + "\",\"password\":\"" + password + "\"}"),
                "Content-Type",
                "application/json");
        if (answer.status() != 200) {
            throw new AssertionError("not signed in: " + answer);
        }
        client.get("/api/v1/me");
        return client;
    }

    /** The same session at another portal. */
    PortalClient at(PortalProcess other) {
        return new PortalClient(cookies, other::uri);
    }

    /** An answer as it came. */
    record Answer(int status, String contentType, String eTag, boolean replayed, String body) {
        JsonNode json() {
            return JsonMapper.shared().readTree(body);
        }
    }

    Answer get(String path) {
        return send("GET", path, BodyPublishers.noBody());
    }

    Answer post(String path, String json, String... headers) {
        return send("POST", path, json(json), with(headers, "Content-Type", "application/json"));
    }

    Answer put(String path, String json, String... headers) {
        return send("PUT", path, json(json), with(headers, "Content-Type", "application/json"));
    }

    /** @throws UncheckedIOException where no answer came */
    Answer send(String method, String path, BodyPublisher body, String... headers) {
        HttpRequest.Builder request = HttpRequest.newBuilder(uri.apply(path))
                .method(method, body)
                .timeout(Duration.ofMinutes(3))
                .header("X-XSRF-TOKEN", cookie("XSRF-TOKEN"));
        if (headers.length > 0) {
            request.headers(headers);
        }
        try {
            HttpResponse<String> response = http.send(request.build(), BodyHandlers.ofString());
            return new Answer(
                    response.statusCode(),
                    response.headers().firstValue("Content-Type").orElse(""),
                    response.headers().firstValue("ETag").orElse(""),
                    response.headers().firstValue("Idempotency-Replayed").isPresent(),
                    response.body());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError("interrupted while waiting for an answer", e);
        }
    }

    private String cookie(String name) {
        return cookies.getCookieStore().getCookies().stream()
                .filter(cookie -> cookie.getName().equals(name))
                .map(HttpCookie::getValue)
                .findFirst()
                .orElse("none");
    }

    private static BodyPublisher json(String json) {
        return BodyPublishers.ofString(json);
    }

    private static String[] with(String[] headers, String name, String value) {
        String[] all = java.util.Arrays.copyOf(headers, headers.length + 2);
        all[headers.length] = name;
        all[headers.length + 1] = value;
        return all;
    }
}
