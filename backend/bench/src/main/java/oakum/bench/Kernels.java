package oakum.bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** A folder with reference kernels, named by {@code -Dreference.kernels=...}; without it only our own part runs. */
final class Kernels {
    private static final long LONGEST_MINUTES = 30;

    private final Path folder;
    private final Path work;

    private Kernels(Path folder, Path work) {
        this.folder = folder;
        this.work = work;
    }

    static Optional<Kernels> find() throws IOException {
        String named = System.getProperty("reference.kernels");
        if (named == null) {
            System.out.println("No folder with reference kernels (-Dreference.kernels): our own part only.");
            return Optional.empty();
        }
        return Optional.of(new Kernels(Path.of(named), Files.createTempDirectory("oakum-bench")));
    }

    /** Where kernels run and find their input. */
    Path work() {
        return work;
    }

    Path source(String name) {
        return folder.resolve(name);
    }

    /** Compiles a C kernel; false with a message where there is no compiler. */
    boolean compile(String source, String program) throws IOException {
        try {
            return run(
                            Map.of(),
                            "gcc",
                            "-O3",
                            "-march=native",
                            source(source).toString(),
                            "-o",
                            program,
                            "-lm",
                            "-pthread")
                    .isPresent();
        } catch (IOException e) {
            System.out.println("No C compiler here: " + e.getMessage());
            return false;
        }
    }

    /** Runs a program in the work folder and gives what it printed; empty with a message where it failed. */
    Optional<String> run(Map<String, String> environment, String... command) throws IOException {
        List<String> words = new ArrayList<>(List.of(command));
        Path out = work.resolve("out.txt");
        ProcessBuilder builder = new ProcessBuilder(words)
                .directory(work.toFile())
                .redirectErrorStream(true)
                .redirectOutput(out.toFile());
        builder.environment().putAll(environment);
        Process process = builder.start();
        try {
            if (!process.waitFor(LONGEST_MINUTES, TimeUnit.MINUTES)) {
                process.destroyForcibly();
                System.out.println(words + " did not end");
                return Optional.empty();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return Optional.empty();
        }
        String printed = Files.readString(out, StandardCharsets.UTF_8);
        if (process.exitValue() != 0) {
            System.out.println(words + " failed: " + printed.strip());
            return Optional.empty();
        }
        return Optional.of(printed);
    }

    /** The number that follows a word in a printed line. */
    static double after(String printed, String word) {
        int at = printed.indexOf(word);
        if (at < 0) {
            throw new IllegalStateException("no \"" + word + "\" in: " + printed);
        }
        return Double.parseDouble(printed.substring(at + word.length()).strip().split("[^0-9a-zA-Z.+-]")[0]);
    }
}
