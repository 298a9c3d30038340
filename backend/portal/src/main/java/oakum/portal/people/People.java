package oakum.portal.people;

import java.time.Clock;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import oakum.portal.http.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What people see and change about themselves and each other. */
@Service
class People {
    private final AccountRows rows;
    private final Accounts accounts;
    private final Audit audit;
    private final Access access;
    private final FirmDay firmDay;
    private final TokenRows tokens;
    private final PasswordEncoder passwords;
    private final SignInLimits limits;
    private final JdbcClient jdbc;
    private final Clock clock;
    private final String firmName;

    People(
            AccountRows rows,
            Accounts accounts,
            Audit audit,
            Access access,
            FirmDay firmDay,
            TokenRows tokens,
            PasswordEncoder passwords,
            SignInLimits limits,
            JdbcClient jdbc,
            Clock clock,
            @Value("${oakum.firm-name}") String firmName) {
        this.rows = rows;
        this.accounts = accounts;
        this.audit = audit;
        this.access = access;
        this.firmDay = firmDay;
        this.tokens = tokens;
        this.passwords = passwords;
        this.limits = limits;
        this.jdbc = jdbc;
        this.clock = clock;
        this.firmName = firmName;
    }

    @Transactional(readOnly = true)
    Me me() {
        Caller caller = access.caller();
        return me(caller, account(caller));
    }

    @Transactional
    Me chooseUnits(Units units) {
        Caller caller = access.caller();
        Account account = account(caller);
        account.useUnits(units.name());
        return me(caller, account);
    }

    private Account account(Caller caller) {
        return rows.findById(caller.personId()).orElseThrow(AccessImpl::signedOut);
    }

    private Me me(Caller caller, Account account) {
        return new Me(
                account.account(),
                account.displayName(),
                held(account.rolesOn(firmDay.today())),
                Units.valueOf(account.units()),
                firmDay.today(),
                firmName,
                caller.token());
    }

    /** Every account but the portal's own. */
    @Transactional(readOnly = true)
    List<PersonView> all() {
        access.require(Permission.MANAGE_PEOPLE);
        return rows.findAllByOrderByAccount().stream()
                .filter(account -> !account.id().equals(Person.PORTAL.id()))
                .map(PersonView::of)
                .toList();
    }

    @Transactional
    PersonView add(NewPerson person) {
        access.require(Permission.MANAGE_PEOPLE);
        if (rows.findByAccount(person.account()).isPresent()) {
            throw Problem.conflict("already-there", "There is an account \"" + person.account() + "\" already.");
        }
        UUID id = accounts.createIfAbsent(
                person.account(), person.displayName(), person.password(), person.role(), person.houseId());
        audit.record(
                "account-made",
                person.houseId(),
                "Made the account \"" + person.account() + "\", "
                        + person.role().label() + ".",
                "/api/v1/people");
        return PersonView.of(rows.findById(id).orElseThrow());
    }

    /**
     * Takes another password. Every other session of the account ends; tokens have secrets of their own and stay.
     *
     * @param session the caller's own session, which stays
     * @throws Problem 403 for a token; 422 {@code old-password-wrong}, {@code outside-limits}; 429
     */
    @Transactional
    void changePassword(String old, String fresh, String address, @Nullable String session) {
        Caller caller = access.caller();
        if (caller.token()) {
            throw Problem.forbidden("A token cannot change a password; sign in with the one you have.");
        }
        limits.check(caller.account(), address);
        Account account = account(caller);
        String hash = account.passwordHash();
        if (hash == null || !passwords.matches(old, hash)) {
            limits.failed(caller.account(), address);
            throw Problem.unprocessable(
                    "old-password-wrong", "oldPassword", "The old password is not right; the password stays as it is.");
        }
        AccountsImpl.requireGood("newPassword", fresh);
        account.usePassword(Objects.requireNonNull(passwords.encode(fresh)));
        endSessions(account.id(), session);
        audit.record("password-changed", null, "Changed the own password; other sessions ended.", "/api/v1/me");
    }

    /**
     * Closes an account: nobody signs in with it, its sessions end, its tokens are revoked. What it did stays.
     *
     * @throws Problem 404; 409 {@code own-account}, {@code account-closed}
     */
    @Transactional
    PersonView close(UUID id, String reason) {
        access.require(Permission.MANAGE_PEOPLE);
        Account account = rows.findById(id)
                .filter(a -> !a.id().equals(Person.PORTAL.id()))
                .orElseThrow(() -> Problem.notFound("account", id));
        if (id.equals(access.caller().personId())) {
            throw Problem.conflict("own-account", "Nobody closes the account with which they are signed in.");
        }
        if (!account.active()) {
            throw Problem.conflict("account-closed", "This account is closed already.");
        }
        account.close();
        Instant now = clock.instant();
        tokens.findByAccountIdOrderByCreatedAtDesc(id).forEach(token -> token.revoke(now));
        endSessions(id, null);
        audit.record(
                "account-closed",
                null,
                "Closed the account \"" + account.account() + "\": " + reason.strip(),
                "/api/v1/people");
        return PersonView.of(account);
    }

    private void endSessions(UUID id, @Nullable String butNot) {
        jdbc.sql("delete from people.spring_session where principal_name = :id and session_id is distinct from :not")
                .param("id", id.toString())
                .param("not", butNot)
                .update();
    }

    static List<Me.Held> held(Set<HeldRole> roles) {
        return roles.stream()
                .map(role -> new Me.Held(role.role(), role.houseId()))
                .sorted(Comparator.comparing(Me.Held::role)
                        .thenComparing(Me.Held::houseId, Comparator.nullsFirst(Comparator.naturalOrder())))
                .toList();
    }
}
