package oakum.portal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import oakum.portal.localdb.LocalPostgres;
import oakum.portal.localdb.LocalPostgres.Durability;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Where the portal cannot start with its own PostgreSQL it says why and what to set, and harms nobody. */
class StartingTest {
    private Path folder;

    @BeforeEach
    void a_folder_of_its_own() {
        folder = PortalProcess.folder("starting");
    }

    @AfterEach
    void is_removed() {
        new PortalProcess(folder, Map.of()).close();
    }

    @Test
    void a_second_portal_on_the_same_folder_leaves_the_first_ones_database_alone() {
        try (LocalPostgres first = LocalPostgres.start(
                folder.resolve("postgres"), 0, "oakum", "oakum-local", Durability.THROWAWAY, Map.of())) {
            assertThat(refusal(new PortalProcess(folder, Map.of())))
                    .contains("another portal")
                    .contains("OAKUM_DATA_DIR");
            first.createDatabaseIfAbsent("still_there");
        }
    }

    @Test
    void as_root_without_a_way_to_be_somebody_else_it_says_what_to_set() throws IOException {
        assumeTrue(
                Files.exists(Path.of("/proc/self"))
                        && Files.getAttribute(Path.of("/proc/self"), "unix:uid").equals(0),
                "only root must become somebody else");
        Path programs = Files.createDirectory(folder.resolve("programs"));
        Files.createSymbolicLink(programs.resolve("id"), program("id"));
        assertThat(refusal(new PortalProcess(folder, Map.of("PATH", programs.toString()))))
                .contains("'unshare -U'", "'setpriv'", "ordinary user", "OAKUM_DB_URL");
    }

    private static String refusal(PortalProcess portal) {
        portal.launch();
        assertThat(portal.awaitEnd()).isEqualTo(1);
        return portal.said();
    }

    private static Path program(String name) {
        return Arrays.stream(System.getenv("PATH").split(File.pathSeparator))
                .map(folder -> Path.of(folder, name))
                .filter(Files::isExecutable)
                .findFirst()
                .orElseThrow();
    }
}
