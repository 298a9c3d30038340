package oakum.portal.people;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The rules of tokens. */
@Service
class Tokens {
    static final String PREFIX = "oak_";
    /** The last use is shown to the minute: a busy machine must not write a row for every request. */
    private static final Duration LAST_USE_GRAIN = Duration.ofMinutes(1);

    private final TokenRows tokens;
    private final Clock clock;

    Tokens(TokenRows tokens, Clock clock) {
        this.tokens = tokens;
        this.clock = clock;
    }

    /** Who speaks with this secret; empty where it is unknown, expired or revoked. */
    @Transactional
    Optional<Person> person(String secret) {
        if (!secret.startsWith(PREFIX)) {
            return Optional.empty();
        }
        Instant now = clock.instant();
        return tokens.findBySecretHash(hash(secret)).filter(t -> t.good(now)).map(token -> {
            Instant last = token.lastUsedAt();
            if (last == null || Duration.between(last, now).abs().compareTo(LAST_USE_GRAIN) >= 0) {
                token.used(now);
            }
            return new Person(token.accountId(), token.id());
        });
    }

    static byte[] hash(String secret) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(secret.getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
