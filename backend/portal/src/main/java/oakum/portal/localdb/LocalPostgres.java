package oakum.portal.localdb;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermission;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A real PostgreSQL from the binaries on the class path, in a folder of its own that outlives the process. Runs as root
 * too: the server then starts in a user namespace, or as an unprivileged user, because it refuses user id 0.
 */
public final class LocalPostgres implements AutoCloseable {
    /** Whether acknowledged data must survive a crash. */
    public enum Durability {
        DURABLE,
        THROWAWAY
    }

    private static final String UNPRIVILEGED = "65534";

    private static final long WATCH_MS = 500;

    /** Belongs to the user of this process; only Linux has it. */
    private static final Path SELF = Path.of("/proc/self");

    private static final String USER_ID = "unix:uid";

    private final Path home;
    private final Path bin;
    private final Path data;
    private final List<String> prefix;
    private final int port;
    private final String user;
    private final String password;
    private final Durability durability;
    private final Map<String, String> extra;
    /** Held as long as this process lives: two portals on one folder would stop each other's server. */
    private final FileLock inUse;

    private boolean closed;

    private LocalPostgres(
            Path home,
            Path bin,
            List<String> prefix,
            int port,
            String user,
            String password,
            Durability durability,
            Map<String, String> extra,
            FileLock inUse) {
        this.home = home;
        this.bin = bin;
        this.data = home.resolve("data");
        this.prefix = prefix;
        this.port = port;
        this.user = user;
        this.password = password;
        this.durability = durability;
        this.extra = Map.copyOf(extra);
        this.inUse = inUse;
    }

    /**
     * Starts the server, making its cluster first where there is none, and stopping what a killed run left behind.
     *
     * @param folder for binaries, data and log; made where absent
     * @param requestedPort 0 for any free one
     * @param user the superuser of the cluster
     * @param extra further server settings
     * @throws IllegalStateException where it cannot start; the message says why and what to set
     */
    public static LocalPostgres start(
            Path folder,
            int requestedPort,
            String user,
            String password,
            Durability durability,
            Map<String, String> extra) {
        FileLock inUse = null;
        LocalPostgres server = null;
        try {
            Path home = folder.toAbsolutePath().normalize();
            Files.createDirectories(home);
            List<String> prefix = privilegeDrop(home.resolve("data"));
            inUse = takeFolder(home);
            Path bin = Programs.unpack(home).resolve("bin");
            if (ownedByOther(prefix)) {
                handOver(home);
            }
            int port = requestedPort != 0 ? requestedPort : freePort();
            LocalPostgres starting =
                    new LocalPostgres(home, bin, prefix, port, user, password, durability, extra, inUse);
            starting.makeCluster();
            starting.requireOwnData();
            starting.stopOrphan();
            starting.launch();
            server = starting;
            return server;
        } catch (AccessDeniedException e) {
            // the library's own message is the bare path
            throw new IllegalStateException(e.getFile() + " may not be read or written by this user", e);
        } catch (IOException e) {
            throw new IllegalStateException(e.getMessage(), e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while starting PostgreSQL", e);
        } finally {
            if (server == null) {
                giveBack(inUse);
            }
        }
    }

    /**
     * From now on starts the server again whenever it ends without {@link #close}: killed for want of memory, or by
     * hand. Same port, same data; what it had acknowledged it finds in its own log.
     */
    public void keepUp() {
        Thread watch = new Thread(this::watch, "postgres-watch");
        watch.setDaemon(true);
        watch.start();
    }

    private void watch() {
        try {
            while (startAgainIfEnded()) {
                Thread.sleep(WATCH_MS);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** False once the server is closed. */
    private synchronized boolean startAgainIfEnded() throws InterruptedException {
        if (closed) {
            return false;
        }
        try {
            if (running().isEmpty()) {
                System.err.println("The embedded PostgreSQL has ended by itself; starting it again.");
                launch();
            }
        } catch (IOException e) {
            System.err.println(e.getMessage());
        }
        return true;
    }

    public int port() {
        return port;
    }

    public String user() {
        return user;
    }

    public String password() {
        return password;
    }

    public String jdbcUrl(String database) {
        return "jdbc:postgresql://127.0.0.1:" + port + "/" + database;
    }

    /** Makes a database unless it is there; the name is the program's own, never a person's. */
    public void createDatabaseIfAbsent(String database) {
        try (Connection connection = DriverManager.getConnection(jdbcUrl("postgres"), user, password);
                var find = connection.prepareStatement("select 1 from pg_database where datname = ?");
                var create = connection.createStatement()) {
            find.setString(1, database);
            try (var found = find.executeQuery()) {
                if (!found.next()) {
                    create.execute("create database \"" + database + "\"");
                }
            }
        } catch (SQLException e) {
            throw new IllegalStateException("the embedded PostgreSQL did not make the database " + database, e);
        }
    }

    @Override
    public synchronized void close() {
        if (closed) {
            return;
        }
        closed = true;
        try {
            if (Files.exists(data.resolve("postmaster.pid"))) {
                stop();
            }
        } catch (IOException e) {
            System.err.println("could not stop PostgreSQL: " + e.getMessage());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            giveBack(inUse);
        }
    }

    private void stop() throws IOException, InterruptedException {
        run(prefix, home, program("pg_ctl"), "stop", "-D", data.toString(), "-m", "fast", "-w", "-t", "120");
    }

    private static FileLock takeFolder(Path home) throws IOException {
        FileChannel channel =
                FileChannel.open(home.resolve("in-use.lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        FileLock lock = null;
        try {
            lock = channel.tryLock();
        } catch (OverlappingFileLockException e) {
            // by this process itself: told below
        }
        if (lock == null) {
            channel.close();
            throw new IOException(
                    "another portal that is running has its database in " + home + ": stop it, or take another folder");
        }
        return lock;
    }

    private static void giveBack(@Nullable FileLock lock) {
        try {
            if (lock != null) {
                lock.acquiredBy().close();
            }
        } catch (IOException e) {
            System.err.println("could not let go of the database folder: " + e.getMessage());
        }
    }

    private void makeCluster() throws IOException, InterruptedException {
        if (Files.exists(data.resolve("PG_VERSION"))) {
            return;
        }
        // initdb writes PG_VERSION early: make the cluster beside and rename it, so that a cut-off run leaves no half
        // one
        Path fresh = home.resolve("data.new");
        deleteTree(fresh);
        Path secret = Files.createTempFile(home, "pw", "");
        try {
            Files.writeString(secret, password);
            if (ownedByOther(prefix)) {
                run(List.of(), home, "chown", UNPRIVILEGED + ":" + UNPRIVILEGED, secret.toString());
            }
            run(
                    prefix,
                    home,
                    program("initdb"),
                    "-D",
                    fresh.toString(),
                    "-U",
                    user,
                    "-E",
                    "UTF8",
                    // no dependence on the host's locales
                    "--locale-provider=builtin",
                    "--builtin-locale=C.UTF-8",
                    "--locale=C",
                    "--auth=scram-sha-256",
                    "--pwfile=" + secret,
                    "--data-checksums",
                    durability == Durability.THROWAWAY ? "--no-sync" : "--no-instructions");
        } finally {
            Files.deleteIfExists(secret);
        }
        Files.move(fresh, data, StandardCopyOption.ATOMIC_MOVE);
    }

    /** PostgreSQL starts only as the user to whom its data belong; after {@link #handOver} they always do. */
    private void requireOwnData() throws IOException {
        if (ownedByOther(prefix) || !Files.exists(SELF)) {
            return;
        }
        Object owner = Files.getAttribute(data, USER_ID);
        if (!owner.equals(Files.getAttribute(SELF, USER_ID))) {
            throw new IOException(
                    "the database in " + data + " belongs to user id " + owner + ": start the portal as that user");
        }
    }

    /** A portal that was killed leaves its server running; two servers on one folder would be worse than a restart. */
    private void stopOrphan() throws IOException, InterruptedException {
        if (running().isPresent()) {
            stop();
        }
    }

    /**
     * The server that the folder's own note names, if it lives. A number alone may have passed to another program since:
     * its command line must name the folder. (Where its program lies cannot always be seen, when it runs as another user.)
     */
    private Optional<ProcessHandle> running() throws IOException {
        List<String> note;
        try {
            note = Files.readAllLines(data.resolve("postmaster.pid"));
        } catch (NoSuchFileException e) {
            return Optional.empty();
        }
        if (note.size() < 2) {
            return Optional.empty();
        }
        String folder = note.get(1).strip();
        return ProcessHandle.of(Long.parseLong(note.get(0).strip()))
                .filter(ProcessHandle::isAlive)
                .filter(process -> process.info().commandLine().orElse("").contains(folder));
    }

    private void launch() throws IOException, InterruptedException {
        Map<String, String> settings = new LinkedHashMap<>();
        settings.put("listen_addresses", "127.0.0.1");
        settings.put("unix_socket_directories", "");
        settings.put("max_connections", "60");
        settings.put("shared_buffers", "256MB");
        settings.put("timezone", "UTC");
        settings.put("log_timezone", "UTC");
        if (durability == Durability.THROWAWAY) {
            settings.put("fsync", "off");
            settings.put("synchronous_commit", "off");
            settings.put("full_page_writes", "off");
        }
        settings.putAll(extra);
        StringBuilder options = new StringBuilder("-p ").append(port);
        settings.forEach((name, value) -> options.append(" -c ")
                .append(name)
                .append("='")
                .append(value.replace("'", ""))
                .append('\''));
        Path log = home.resolve("postgres.log");
        // after kill -9 of the whole tree the old pid or its shared memory may linger for a moment
        long end = System.nanoTime() + 60_000_000_000L;
        while (true) {
            try {
                // pg_ctl gives the server a session of its own, so that Ctrl-C in the terminal stops the portal first
                run(
                        prefix,
                        home,
                        program("pg_ctl"),
                        "start",
                        "-D",
                        data.toString(),
                        "-w",
                        // it may have much of its own log to read after a kill; where it fails, pg_ctl says so at once
                        "-t",
                        "600",
                        "-l",
                        log.toString(),
                        "-o",
                        options.toString());
                return;
            } catch (IOException e) {
                String why = e.getMessage() + (Files.exists(log) ? "; its log " + log + " ends: " + tail(log) : "");
                boolean lingering = why.contains("postmaster.pid") || why.contains("shared memory");
                if (!lingering || System.nanoTime() > end) {
                    throw new IOException("PostgreSQL did not start: " + why, e);
                }
                Thread.sleep(300);
            }
        }
    }

    private String program(String name) {
        return bin.resolve(name).toString();
    }

    /** Empty for an ordinary user; for root a command prefix under which PostgreSQL does not see user id 0. */
    private static List<String> privilegeDrop(Path data) throws IOException, InterruptedException {
        if (!System.getProperty("os.name").toLowerCase(Locale.ROOT).contains("linux")
                || !Files.getAttribute(SELF, USER_ID).equals(0)) {
            return List.of();
        }
        List<String> namespace = List.of("unshare", "-U");
        List<String> otherUser =
                List.of("setpriv", "--reuid=" + UNPRIVILEGED, "--regid=" + UNPRIVILEGED, "--clear-groups");
        // data that were handed over once stay so
        boolean handedOver =
                Files.exists(data) && Files.getAttribute(data, USER_ID).equals(Integer.valueOf(UNPRIVILEGED));
        for (List<String> way : handedOver ? List.of(otherUser, namespace) : List.of(namespace, otherUser)) {
            String id = capture(concat(way, "id", "-u"));
            if (!id.isEmpty() && !id.equals("0")) {
                return way;
            }
        }
        throw new IOException("PostgreSQL will not run as root, and neither 'unshare -U' nor 'setpriv' works here:"
                + " start the portal as an ordinary user");
    }

    private static boolean ownedByOther(List<String> prefix) {
        return !prefix.isEmpty() && prefix.get(0).equals("setpriv");
    }

    private static void handOver(Path home) throws IOException, InterruptedException {
        for (Path parent = home.getParent(); parent != null; parent = parent.getParent()) {
            if (!Files.getPosixFilePermissions(parent).contains(PosixFilePermission.OTHERS_EXECUTE)) {
                throw new IOException(
                        "user id " + UNPRIVILEGED + " cannot enter " + parent + ": set the database folder elsewhere");
            }
        }
        run(List.of(), home, "chown", "-R", UNPRIVILEGED + ":" + UNPRIVILEGED, home.toString());
    }

    private static String capture(List<String> command) throws InterruptedException {
        try {
            Process process = new ProcessBuilder(command)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            return process.waitFor() == 0 ? said.strip() : "";
        } catch (IOException e) {
            return "";
        }
    }

    private static void run(List<String> prefix, Path folder, String... arguments)
            throws IOException, InterruptedException {
        List<String> command = concat(prefix, arguments);
        // a file, not a pipe: the server inherits the output and would keep a pipe open for ever
        Path said = Files.createTempFile("oakum-postgres", ".out");
        try {
            Process process = new ProcessBuilder(command)
                    .directory(folder.toFile())
                    .redirectErrorStream(true)
                    .redirectOutput(said.toFile())
                    .start();
            if (process.waitFor() != 0) {
                throw new IOException(String.join(" ", command) + " failed: " + Files.readString(said));
            }
        } finally {
            Files.deleteIfExists(said);
        }
    }

    private static List<String> concat(List<String> first, String... rest) {
        List<String> all = new ArrayList<>(first);
        all.addAll(List.of(rest));
        return all;
    }

    private static String tail(Path file) throws IOException {
        List<String> lines = Files.readAllLines(file);
        return String.join(" | ", lines.subList(Math.max(0, lines.size() - 5), lines.size()));
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        }
    }

    private static void deleteTree(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        try (var files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }
}
