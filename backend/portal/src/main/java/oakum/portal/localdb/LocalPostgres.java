package oakum.portal.localdb;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveInputStream;
import org.apache.commons.compress.compressors.xz.XZCompressorInputStream;

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

    private final Path home;
    private final Path bin;
    private final Path data;
    private final List<String> prefix;
    private final int port;
    private final String user;
    private final String password;

    private LocalPostgres(Path home, Path bin, List<String> prefix, int port, String user, String password) {
        this.home = home;
        this.bin = bin;
        this.data = home.resolve("data");
        this.prefix = prefix;
        this.port = port;
        this.user = user;
        this.password = password;
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
        try {
            Path home = folder.toAbsolutePath();
            Files.createDirectories(home);
            List<String> prefix = privilegeDrop();
            if (ownedByOther(prefix)) {
                handOver(home);
            }
            Path bin = unpack(home).resolve("bin");
            int port = requestedPort != 0 ? requestedPort : freePort();
            LocalPostgres server = new LocalPostgres(home, bin, prefix, port, user, password);
            server.makeCluster(durability);
            server.stopOrphan();
            server.launch(durability, extra);
            return server;
        } catch (IOException e) {
            throw new IllegalStateException(e.getMessage(), e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while starting PostgreSQL", e);
        }
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
        if (!Files.exists(data.resolve("postmaster.pid"))) {
            return;
        }
        try {
            stop();
        } catch (IOException e) {
            System.err.println("could not stop PostgreSQL: " + e.getMessage());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void stop() throws IOException, InterruptedException {
        run(prefix, home, program("pg_ctl"), "stop", "-D", data.toString(), "-m", "fast", "-w", "-t", "30");
    }

    private void makeCluster(Durability durability) throws IOException, InterruptedException {
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

    /** A portal that was killed leaves its server running; two servers on one folder would be worse than a restart. */
    private void stopOrphan() throws IOException, InterruptedException {
        Path pidFile = data.resolve("postmaster.pid");
        if (!Files.exists(pidFile)) {
            return;
        }
        List<String> lines = Files.readAllLines(pidFile);
        boolean alive = !lines.isEmpty()
                && ProcessHandle.of(Long.parseLong(lines.get(0).strip()))
                        .filter(ProcessHandle::isAlive)
                        .flatMap(process -> process.info().command())
                        .filter(command -> command.endsWith("/postgres"))
                        .isPresent();
        if (alive) {
            stop();
        }
    }

    private void launch(Durability durability, Map<String, String> extra) throws IOException, InterruptedException {
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
        long end = System.nanoTime() + 20_000_000_000L;
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
                        "-t",
                        "60",
                        "-l",
                        log.toString(),
                        "-o",
                        options.toString());
                return;
            } catch (IOException e) {
                String why = Files.exists(log) ? tail(log) : String.valueOf(e.getMessage());
                boolean lingering = why.contains("postmaster.pid") || why.contains("shared memory");
                if (!lingering || System.nanoTime() > end) {
                    throw new IOException("PostgreSQL did not start; its log " + log + " ends: " + why, e);
                }
                Thread.sleep(300);
            }
        }
    }

    private String program(String name) {
        return bin.resolve(name).toString();
    }

    /** Empty for an ordinary user; for root a command prefix under which PostgreSQL does not see user id 0. */
    private static List<String> privilegeDrop() throws IOException, InterruptedException {
        if (!System.getProperty("os.name").toLowerCase(Locale.ROOT).contains("linux")
                || !capture("id", "-u").equals("0")) {
            return List.of();
        }
        List<String> namespace = List.of("unshare", "-U");
        List<String> otherUser =
                List.of("setpriv", "--reuid=" + UNPRIVILEGED, "--regid=" + UNPRIVILEGED, "--clear-groups");
        for (List<String> way : List.of(namespace, otherUser)) {
            String id = capture(concat(way, "id", "-u"));
            if (!id.isEmpty() && !id.equals("0")) {
                return way;
            }
        }
        throw new IOException("PostgreSQL will not run as root, and neither 'unshare -U' nor 'setpriv' is allowed here:"
                + " run as an ordinary user");
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

    private static String capture(String... command) throws InterruptedException {
        return capture(List.of(command));
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

    private static String archive() {
        String os = System.getProperty("os.name").toLowerCase(Locale.ROOT);
        String arch = System.getProperty("os.arch");
        String machine = arch.equals("aarch64") || arch.equals("arm64") ? "arm_64" : "x86_64";
        return "/postgres-" + (os.contains("mac") ? "darwin" : "linux") + "-" + machine + ".txz";
    }

    private static InputStream openArchive() throws IOException {
        InputStream in = LocalPostgres.class.getResourceAsStream(archive());
        if (in == null) {
            throw new IOException("there are no PostgreSQL binaries for this platform on the class path (" + archive()
                    + "); use a server of your own");
        }
        return new BufferedInputStream(in, 1 << 16);
    }

    /** Unpacks the binaries once per version; two starts at the same moment wait for each other. */
    private static Path unpack(Path home) throws IOException {
        Path programs = home.resolve("programs-" + fingerprint());
        try (FileChannel channel = FileChannel.open(
                        home.resolve("programs.lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
                FileLock lock = channel.lock()) {
            if (lock.isValid() && Files.exists(programs.resolve(".complete"))) {
                return programs;
            }
            try (var tar = new TarArchiveInputStream(new XZCompressorInputStream(openArchive()))) {
                for (TarArchiveEntry entry = tar.getNextEntry(); entry != null; entry = tar.getNextEntry()) {
                    unpack(tar, entry, programs);
                }
            }
            Files.createFile(programs.resolve(".complete"));
        }
        return programs;
    }

    private static void unpack(TarArchiveInputStream tar, TarArchiveEntry entry, Path into) throws IOException {
        Path target = into.resolve(entry.getName()).normalize();
        if (!target.startsWith(into)) {
            throw new IOException("the archive points outside its folder: " + entry.getName());
        }
        if (entry.isDirectory()) {
            Files.createDirectories(target);
            return;
        }
        Files.createDirectories(into.resolve(target).getParent());
        if (entry.isSymbolicLink()) {
            Files.deleteIfExists(target);
            Files.createSymbolicLink(target, Path.of(entry.getLinkName()));
            return;
        }
        Files.copy(tar, target, StandardCopyOption.REPLACE_EXISTING);
        if ((entry.getMode() & 0100) != 0) {
            Files.setPosixFilePermissions(target, PosixFilePermissions.fromString("rwxr-xr-x"));
        }
    }

    private static String fingerprint() throws IOException {
        try (InputStream in = openArchive()) {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            byte[] buffer = new byte[1 << 16];
            for (int n = in.read(buffer); n > 0; n = in.read(buffer)) {
                digest.update(buffer, 0, n);
            }
            return HexFormat.of().formatHex(digest.digest(), 0, 8);
        } catch (NoSuchAlgorithmException e) {
            throw new IOException(e);
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
