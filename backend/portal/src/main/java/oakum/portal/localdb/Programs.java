package oakum.portal.localdb;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveInputStream;
import org.apache.commons.compress.compressors.xz.XZCompressorInputStream;

/** The programs of PostgreSQL, from the class path into a folder. */
final class Programs {
    private Programs() {}

    private static String archive() {
        String os = System.getProperty("os.name").toLowerCase(Locale.ROOT);
        String arch = System.getProperty("os.arch");
        String machine = arch.equals("aarch64") || arch.equals("arm64") ? "arm_64" : "x86_64";
        return "/postgres-" + (os.contains("mac") ? "darwin" : "linux") + "-" + machine + ".txz";
    }

    private static InputStream openArchive() throws IOException {
        InputStream in = Programs.class.getResourceAsStream(archive());
        if (in == null) {
            throw new IOException("there are no PostgreSQL binaries for this platform on the class path (" + archive()
                    + "); use a server of your own");
        }
        return new BufferedInputStream(in, 1 << 16);
    }

    /** Unpacks the binaries once per version; two starts at the same moment wait for each other. */
    static Path unpack(Path home) throws IOException {
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
}
