package oakum.portal;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import oakum.portal.localdb.LocalPostgres;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.springframework.boot.security.autoconfigure.UserDetailsServiceAutoConfiguration;
import org.springframework.core.env.MapPropertySource;

/** Starts the portal, with a PostgreSQL of its own unless {@code OAKUM_DB_URL} names another server. */
// accounts are ours: no user with a generated password
@SpringBootApplication(exclude = UserDetailsServiceAutoConfiguration.class)
public class Portal {
    public static void main(String[] arguments) {
        SpringApplication application = new SpringApplication(Portal.class);
        Map<String, Object> settings = new LinkedHashMap<>();
        String url = System.getenv("OAKUM_DB_URL");
        if (url == null || url.isBlank()) {
            LocalPostgres postgres = startLocal();
            // after the contexts are closed, so that nothing is still writing when the server goes
            SpringApplication.getShutdownHandlers().add(postgres::close);
            settings.put("OAKUM_DB_URL", postgres.jdbcUrl("oakum"));
            settings.put("OAKUM_DB_USER", postgres.user());
            settings.put("OAKUM_DB_PASSWORD", postgres.password());
        }
        // first of all sources: an OAKUM_DB_URL that is set but empty means the same as none
        application.addInitializers(context -> context.getEnvironment()
                .getPropertySources()
                .addFirst(new MapPropertySource("embedded PostgreSQL", settings)));
        application.run(arguments);
    }

    private static LocalPostgres startLocal() {
        String folder = System.getenv().getOrDefault("OAKUM_DATA_DIR", "data");
        int port = Integer.parseInt(System.getenv().getOrDefault("OAKUM_DB_PORT", "0"));
        try {
            LocalPostgres postgres = LocalPostgres.start(
                    Path.of(folder, "postgres"),
                    port,
                    "oakum",
                    "oakum-local",
                    LocalPostgres.Durability.DURABLE,
                    Map.of());
            postgres.createDatabaseIfAbsent("oakum");
            postgres.keepUp();
            return postgres;
        } catch (IllegalStateException e) {
            System.err.println();
            System.err.println("The embedded PostgreSQL could not start: " + e.getMessage());
            System.err.println(
                    "Either set OAKUM_DB_URL, OAKUM_DB_USER and OAKUM_DB_PASSWORD to a PostgreSQL 17 server,");
            System.err.println("or set OAKUM_DATA_DIR to a folder where it may run.");
            System.exit(1);
            throw e;
        }
    }
}
