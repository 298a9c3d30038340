package oakum.portal;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.util.FileSystemUtils;

/**
 * The portal in a process of its own, as people start it, so that it can be killed. What it says goes to a file in its
 * folder and is told where it does not start.
 */
final class PortalProcess implements AutoCloseable {
    static final String PASSWORD = "a first password";
    /** Far more than it takes; a loaded machine must not fail a test. */
    static final Duration PATIENCE = Duration.ofMinutes(4);

    private final Path folder;
    private final Map<String, String> settings;
    private final int port;
    private @Nullable Process process;

    /**
     * @param folder for its data and its log; made where absent
     * @param settings environment variables beside those that every portal here gets
     */
    PortalProcess(Path folder, Map<String, String> settings) {
        this.folder = folder.toAbsolutePath();
        this.settings = Map.copyOf(settings);
        this.port = freePort();
    }

    /** A folder under the build's own for one test. */
    static Path folder(String name) {
        try {
            return Files.createTempDirectory(Files.createDirectories(Path.of("target")), name)
                    .toAbsolutePath();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Starts it and returns at once. */
    void launch() {
        ProcessBuilder builder = new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx384m",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                classPath(),
                Portal.class.getName());
        Map<String, String> environment = builder.environment();
        environment.keySet().removeIf(name -> name.startsWith("OAKUM_"));
        Map<String, String> ours = new LinkedHashMap<>();
        ours.put("OAKUM_DATA_DIR", folder.toString());
        ours.put("OAKUM_PORT", String.valueOf(port));
        ours.put("OAKUM_PRINCIPAL_PASSWORD", PASSWORD);
        ours.putAll(settings);
        environment.putAll(ours);
        try {
            Files.createDirectories(folder);
            Process started = builder.redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.appendTo(log().toFile()))
                    .start();
            // a test run that is stopped must not leave it running
            Runtime.getRuntime().addShutdownHook(new Thread(started::destroy));
            process = started;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Waits until it is ready for requests; it listens a little earlier. */
    void awaitUp() {
        HttpClient http = HttpClient.newHttpClient();
        HttpRequest ready = HttpRequest.newBuilder(uri("/actuator/health/readiness"))
                .timeout(Duration.ofSeconds(30))
                .build();
        await("the portal is ready", () -> {
            if (!alive()) {
                throw new AssertionError("the portal ended: " + said());
            }
            try {
                return http.send(ready, BodyHandlers.discarding()).statusCode() == 200;
            } catch (IOException e) {
                return false;
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new AssertionError("interrupted while waiting for the portal", e);
            }
        });
    }

    URI uri(String path) {
        return URI.create("http://127.0.0.1:" + port + path);
    }

    boolean alive() {
        return process != null && process.isAlive();
    }

    /** What it has said so far. */
    String said() {
        try {
            return Files.readString(log());
        } catch (IOException e) {
            return "nothing: " + e.getMessage();
        }
    }

    /** kill -9 of the portal alone. */
    void kill() {
        Process running = Objects.requireNonNull(process, "never started");
        running.destroyForcibly();
        await("the portal is gone", () -> !running.isAlive());
    }

    /** Waits until it ended by itself. */
    int awaitEnd() {
        Process running = Objects.requireNonNull(process, "never started");
        await("the portal ended", () -> !running.isAlive());
        return running.exitValue();
    }

    /** kill -9 of every process of its own PostgreSQL; there must be some. */
    void killDatabase() {
        List<ProcessHandle> servers = database();
        if (servers.isEmpty()) {
            throw new AssertionError("there is no PostgreSQL to kill in " + folder);
        }
        servers.forEach(ProcessHandle::destroyForcibly);
        await("PostgreSQL is gone", () -> servers.stream().noneMatch(ProcessHandle::isAlive));
    }

    /** The processes of its own PostgreSQL, the first one first. */
    List<ProcessHandle> database() {
        List<String> pidFile = pidFile();
        if (pidFile.isEmpty()) {
            return List.of();
        }
        // the number may have passed to a stranger since
        return ProcessHandle.of(Long.parseLong(pidFile.get(0).strip()))
                .filter(first -> first.info().commandLine().orElse("").contains(folder.toString()))
                .stream()
                .flatMap(first -> Stream.concat(Stream.of(first), first.descendants()))
                .filter(ProcessHandle::isAlive)
                .toList();
    }

    /** Where its own PostgreSQL answers. */
    String databaseUrl() {
        return "jdbc:postgresql://127.0.0.1:" + pidFile().get(3).strip() + "/oakum";
    }

    /** Ends what still runs and removes the folder. */
    @Override
    public void close() {
        Process running = process;
        if (running != null && running.isAlive()) {
            running.destroy();
            try {
                if (!running.waitFor(60, TimeUnit.SECONDS)) {
                    kill();
                }
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                running.destroyForcibly();
            }
        }
        if (!database().isEmpty()) {
            killDatabase();
        }
        try {
            FileSystemUtils.deleteRecursively(folder);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Asks again and again until it is so. */
    static void await(String what, BooleanSupplier so) {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (!so.getAsBoolean()) {
            if (System.nanoTime() > end) {
                throw new AssertionError(new TimeoutException("not within " + PATIENCE.toSeconds() + " s: " + what));
            }
            try {
                TimeUnit.MILLISECONDS.sleep(50);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new AssertionError("interrupted while waiting: " + what, e);
            }
        }
    }

    private List<String> pidFile() {
        try {
            return Files.readAllLines(folder.resolve("postgres/data/postmaster.pid"));
        } catch (NoSuchFileException e) {
            return List.of();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Path log() {
        return folder.resolve("portal.log");
    }

    /** Without the classes of tests: their configuration would become the portal's. */
    private static String classPath() {
        String all = System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
        return Arrays.stream(all.split(File.pathSeparator))
                .filter(entry -> !Path.of(entry).endsWith("test-classes"))
                .collect(Collectors.joining(File.pathSeparator));
    }

    private static int freePort() {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
