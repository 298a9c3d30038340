package oakum.portal.people;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What people see and change about themselves and each other. */
@Service
class People {
    private final AccountRows accounts;
    private final Access access;
    private final Clock clock;
    private final String firmName;
    private final ZoneId firmZone;

    People(
            AccountRows accounts,
            Access access,
            Clock clock,
            @Value("${oakum.firm-name}") String firmName,
            @Value("${oakum.time-zone}") ZoneId firmZone) {
        this.accounts = accounts;
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
        return accounts.findById(caller.personId()).orElseThrow(AccessImpl::signedOut);
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

    static List<Me.Held> held(Account account) {
        return account.roles().stream()
                .map(role -> new Me.Held(role.role(), role.houseId()))
                .sorted(Comparator.comparing(Me.Held::role)
                        .thenComparing(Me.Held::houseId, Comparator.nullsFirst(Comparator.naturalOrder())))
                .toList();
    }
}
