package oakum.portal.people;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import oakum.portal.http.Problem;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The rules of tokens. */
@Service
class Tokens {
    static final String PREFIX = "oak_";
    /** The last use is shown to the minute: a busy machine must not write a row for every request. */
    private static final Duration LAST_USE_GRAIN = Duration.ofMinutes(1);

    private static final int SECRET_BYTES = 32;
    private static final int LONGEST_LIFE_DAYS = 366;
    private static final int LONGEST_LABEL = 120;
    private static final int MOST_HOUSES = 100;

    private final SecureRandom random = new SecureRandom();
    private final TokenRows tokens;
    private final Access access;
    private final Audit audit;
    private final Clock clock;

    Tokens(TokenRows tokens, Access access, Audit audit, Clock clock) {
        this.tokens = tokens;
        this.access = access;
        this.audit = audit;
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

    /** A new token; its secret is in the answer and nowhere else. */
    @Transactional
    MadeToken make(NewToken wanted) {
        Caller caller = access.caller();
        if (caller.token()) {
            throw Problem.forbidden("A token cannot make tokens; sign in with a password.");
        }
        if (wanted.label().isBlank() || wanted.label().length() > LONGEST_LABEL) {
            throw Problem.unprocessable("outside-limits", "label", "label is 1 to 120 characters.");
        }
        if (wanted.days() < 1 || wanted.days() > LONGEST_LIFE_DAYS) {
            throw Problem.unprocessable(
                    "outside-limits", "days", "days = " + wanted.days() + " is outside 1 to 366 days.");
        }
        if (wanted.permissions().isEmpty()) {
            throw Problem.unprocessable("outside-limits", "permissions", "permissions names at least one.");
        }
        if (wanted.houses().size() > MOST_HOUSES) {
            throw Problem.unprocessable("outside-limits", "houses", "houses names at most 100.");
        }
        for (String house : wanted.houses()) {
            access.require(Permission.VIEW_HOUSE, house);
            for (Permission permission : wanted.permissions()) {
                access.require(permission, house);
            }
        }
        byte[] bytes = new byte[SECRET_BYTES];
        random.nextBytes(bytes);
        String secret = PREFIX + Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
        Instant now = clock.instant();
        Token token = tokens.save(new Token(
                caller.personId(),
                wanted.label(),
                hash(secret),
                now,
                now.plus(Duration.ofDays(wanted.days())),
                wanted.houses(),
                wanted.permissions()));
        audit.record(
                "token-made",
                null,
                "Made the token \"" + wanted.label() + "\" for " + wanted.days() + " days.",
                "/api/v1/tokens");
        return new MadeToken(TokenView.of(token), secret);
    }

    /** The caller's own tokens, newest first. */
    @Transactional(readOnly = true)
    List<TokenView> mine() {
        return tokens.findByAccountIdOrderByCreatedAtDesc(access.caller().personId()).stream()
                .map(TokenView::of)
                .toList();
    }

    /** Makes one of the caller's tokens useless, at once and for ever. */
    @Transactional
    void revoke(UUID id) {
        Caller caller = access.caller();
        Token token = tokens.findById(id)
                .filter(t -> t.accountId().equals(caller.personId()))
                .orElseThrow(() -> Problem.notFound("token", id));
        token.revoke(clock.instant());
        audit.record("token-revoked", null, "Revoked the token \"" + token.label() + "\".", "/api/v1/tokens");
    }

    static byte[] hash(String secret) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(secret.getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
