package oakum.portal;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import oakum.portal.localdb.LocalPostgres;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.boot.testcontainers.service.connection.ServiceConnection;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Condition;
import org.springframework.context.annotation.ConditionContext;
import org.springframework.context.annotation.Conditional;
import org.springframework.core.type.AnnotatedTypeMetadata;
import org.springframework.util.FileSystemUtils;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.postgresql.PostgreSQLContainer;

/** The one place that chooses a real PostgreSQL for tests: a container where an engine answers, else the embedded one. */
@TestConfiguration(proxyBeanMethods = false)
public class DatabaseForTests {
    private static final AtomicInteger DATABASES = new AtomicInteger();

    @Bean
    @ServiceConnection
    @Conditional(EngineAnswers.class)
    PostgreSQLContainer container() {
        return new PostgreSQLContainer("postgres:17");
    }

    /** One server per test run, a fresh database per context. */
    @Bean
    @Conditional(NoEngineAnswers.class)
    JdbcConnectionDetails embedded() {
        LocalPostgres server = Embedded.SERVER;
        String database = "test" + DATABASES.incrementAndGet();
        server.createDatabaseIfAbsent(database);
        return new JdbcConnectionDetails() {
            @Override
            public String getUsername() {
                return server.user();
            }

            @Override
            public String getPassword() {
                return server.password();
            }

            @Override
            public String getJdbcUrl() {
                return server.jdbcUrl(database);
            }
        };
    }

    private static final class Embedded {
        static final LocalPostgres SERVER = start();

        private static LocalPostgres start() {
            try {
                Path folder = Files.createTempDirectory("oakum-test-postgres");
                LocalPostgres server = LocalPostgres.start(
                        folder,
                        0,
                        "oakum",
                        "oakum",
                        LocalPostgres.Durability.THROWAWAY,
                        Map.of("max_connections", "100"));
                Runtime.getRuntime().addShutdownHook(new Thread(() -> {
                    server.close();
                    try {
                        FileSystemUtils.deleteRecursively(folder);
                    } catch (IOException e) {
                        throw new UncheckedIOException(e);
                    }
                }));
                return server;
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    static class EngineAnswers implements Condition {
        private static final boolean ANSWERS = look();

        @Override
        public boolean matches(ConditionContext context, AnnotatedTypeMetadata metadata) {
            return ANSWERS;
        }

        private static boolean look() {
            // the socket first: without it the client library logs an error and costs seconds
            if (System.getenv("DOCKER_HOST") == null && !Files.exists(Path.of("/var/run/docker.sock"))) {
                return false;
            }
            try {
                return DockerClientFactory.instance().isDockerAvailable();
            } catch (RuntimeException e) {
                return false;
            }
        }
    }

    static class NoEngineAnswers extends EngineAnswers {
        @Override
        public boolean matches(ConditionContext context, AnnotatedTypeMetadata metadata) {
            return !super.matches(context, metadata);
        }
    }
}
