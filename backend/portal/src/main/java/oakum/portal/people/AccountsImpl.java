package oakum.portal.people;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import oakum.portal.http.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The rules of accounts. */
@Service
class AccountsImpl implements Accounts {
    private static final Pattern NAME = Pattern.compile("[a-z0-9][a-z0-9.-]{0,59}");
    private static final int LONGEST_DISPLAY_NAME = 120;
    private static final int SHORTEST_PASSWORD = 8;
    /** The password hash reads no more than this; a longer one would be cut without a word. */
    private static final int LONGEST_PASSWORD_BYTES = 72;

    private final AccountRows accounts;
    private final TokenRows tokens;
    private final PasswordEncoder passwords;
    private final Clock clock;
    private final FirmDay firmDay;

    AccountsImpl(AccountRows accounts, TokenRows tokens, PasswordEncoder passwords, Clock clock, FirmDay firmDay) {
        this.accounts = accounts;
        this.tokens = tokens;
        this.passwords = passwords;
        this.clock = clock;
        this.firmDay = firmDay;
    }

    @Override
    @Transactional
    public UUID createIfAbsent(
            String account, String displayName, String password, Role role, @Nullable String houseId) {
        Account person = accounts.findByAccount(account).orElseGet(() -> create(account, displayName, password));
        boolean needsHouse = role == Role.OWNER || role == Role.CONSULTANT;
        if (houseId != null || !needsHouse) {
            if (person.roles().stream().noneMatch(held -> held.is(role, houseId))) {
                person.roles().add(new HeldRole(role, houseId, null));
            }
        }
        AccessImpl.forget();
        return accounts.save(person).id();
    }

    private Account create(String account, String displayName, String password) {
        if (!NAME.matcher(account).matches()) {
            throw Problem.unprocessable(
                    "outside-limits",
                    "account",
                    "account is 1 to 60 characters of a to z, 0 to 9, dot and hyphen, and begins with a letter or digit.");
        }
        if (displayName.isBlank() || displayName.length() > LONGEST_DISPLAY_NAME) {
            throw Problem.unprocessable("outside-limits", "displayName", "displayName is 1 to 120 characters.");
        }
        requireGood("password", password);
        return new Account(account, displayName, encoded(password), clock.instant());
    }

    /**
     * Lets a password pass that may be used.
     *
     * @param field its name in what was sent
     */
    static void requireGood(String field, String password) {
        if (password.length() < SHORTEST_PASSWORD
                || password.getBytes(StandardCharsets.UTF_8).length > LONGEST_PASSWORD_BYTES) {
            throw Problem.unprocessable(
                    "outside-limits", field, field + " is at least 8 characters and at most 72 bytes.");
        }
    }

    private String encoded(String password) {
        return Objects.requireNonNull(passwords.encode(password));
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<String> displayName(UUID personId) {
        return accounts.findById(personId).map(Account::displayName);
    }

    @Override
    @Transactional(readOnly = true)
    public Units units(UUID personId) {
        return accounts.findById(personId)
                .map(account -> Units.valueOf(account.units()))
                .orElseThrow(() -> Problem.notFound("account", personId));
    }

    @Override
    @Transactional(readOnly = true)
    public List<HeldToken> tokens(UUID personId) {
        return tokens.findByAccountIdOrderByCreatedAtDesc(personId).stream()
                .filter(token -> token.good(clock.instant()))
                .map(token ->
                        new HeldToken(token.label(), Set.copyOf(token.houses()), token.expiresAt(), token.lastUsedAt()))
                .toList();
    }

    @Override
    @Transactional(readOnly = true)
    public Set<String> holders(String houseId, Role role) {
        return accounts.findByHouse(houseId).stream()
                .filter(account -> account.active()
                        && account.rolesOn(firmDay.today()).stream().anyMatch(held -> held.is(role, houseId)))
                .map(Account::displayName)
                .collect(Collectors.toSet());
    }

    @Override
    public <T> T as(String account, Supplier<T> work) {
        UUID id = accounts.findByAccount(account)
                .map(Account::id)
                .orElseThrow(() -> Problem.notFound("account", account));
        return AsPortal.as(new Person(id, null), work);
    }
}
