package oakum.portal.people;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import oakum.portal.http.Problem;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What people see and change about themselves and each other. */
@Service
class People {
    private final AccountRows rows;
    private final Accounts accounts;
    private final Audit audit;
    private final Access access;
    private final Clock clock;
    private final String firmName;
    private final ZoneId firmZone;

    People(
            AccountRows rows,
            Accounts accounts,
            Audit audit,
            Access access,
            Clock clock,
            @Value("${oakum.firm-name}") String firmName,
            @Value("${oakum.time-zone}") ZoneId firmZone) {
        this.rows = rows;
        this.accounts = accounts;
        this.audit = audit;
        this.access = access;
        this.clock = clock;
        this.firmName = firmName;
        this.firmZone = firmZone;
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
                held(account),
                Units.valueOf(account.units()),
                LocalDate.ofInstant(clock.instant(), firmZone),
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

    static List<Me.Held> held(Account account) {
        return account.roles().stream()
                .map(role -> new Me.Held(role.role(), role.houseId()))
                .sorted(Comparator.comparing(Me.Held::role)
                        .thenComparing(Me.Held::houseId, Comparator.nullsFirst(Comparator.naturalOrder())))
                .toList();
    }
}
