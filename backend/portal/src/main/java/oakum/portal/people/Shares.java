package oakum.portal.people;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import oakum.portal.http.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Who holds a role for one house: giving it and taking it back. */
@Service
class Shares {
    private final AccountRows accounts;
    private final Access access;
    private final Audit audit;
    private final ObjectProvider<KnownHouses> houses;
    private final FirmDay firmDay;

    Shares(AccountRows accounts, Access access, Audit audit, ObjectProvider<KnownHouses> houses, FirmDay firmDay) {
        this.accounts = accounts;
        this.access = access;
        this.audit = audit;
        this.houses = houses;
        this.firmDay = firmDay;
    }

    /**
     * A role that somebody holds for the house.
     *
     * @param endsOn the last day on which it is held, or null
     * @param ended whether that day is over
     */
    record Share(
            UUID personId,
            String account,
            String displayName,
            Role role,
            @Nullable LocalDate endsOn,
            boolean ended) {}

    /** Whoever may see the house may see who else may. */
    @Transactional(readOnly = true)
    List<Share> of(String houseId) {
        access.require(Permission.VIEW_HOUSE, houseId);
        requireHouse(houseId);
        return accounts.findByHouse(houseId).stream()
                .flatMap(account -> account.roles().stream()
                        .filter(role -> houseId.equals(role.houseId()))
                        .sorted(Comparator.comparing(HeldRole::role))
                        .map(role -> share(account, role)))
                .toList();
    }

    /**
     * Gives a role, or gives one that is held another end.
     *
     * @throws Problem 422 {@code account-unknown}, {@code day-past}
     */
    @Transactional
    Share give(String houseId, String account, Role role, @Nullable LocalDate endsOn) {
        access.require(Permission.SHARE_HOUSE, houseId);
        requireHouse(houseId);
        Account person = accounts.findByAccount(account.strip().toLowerCase(Locale.ROOT))
                .orElseThrow(() -> Problem.unprocessable(
                        "account-unknown", "account", "There is no account \"" + account + "\"."));
        if (endsOn != null && endsOn.isBefore(firmDay.today())) {
            throw Problem.unprocessable("day-past", "endsOn", endsOn + " is over; today is " + firmDay.today() + ".");
        }
        HeldRole held = new HeldRole(role, houseId, endsOn);
        if (!person.roles().contains(held)) {
            person.roles().removeIf(before -> before.is(role, houseId));
            // the row before must be gone before this one comes: one role for one house is held once
            accounts.saveAndFlush(person);
            person.roles().add(held);
            audit.record(
                    "house-shared",
                    houseId,
                    "Shared with " + person.displayName() + " as " + role.label()
                            + (endsOn == null ? "." : " until " + endsOn + "."),
                    "/api/v1/houses/" + houseId + "/shares");
        }
        AccessImpl.forget();
        return share(person, held);
    }

    @Transactional
    void takeBack(String houseId, UUID personId) {
        access.require(Permission.SHARE_HOUSE, houseId);
        Account person = accounts.findById(personId)
                .filter(account -> account.roles().stream().anyMatch(role -> houseId.equals(role.houseId())))
                .orElseThrow(() -> Problem.notFound("share with", personId));
        person.roles().removeIf(role -> houseId.equals(role.houseId()));
        audit.record(
                "share-withdrawn",
                houseId,
                "No longer shared with " + person.displayName() + ".",
                "/api/v1/houses/" + houseId + "/shares");
        AccessImpl.forget();
    }

    private void requireHouse(String houseId) {
        KnownHouses known = houses.getIfAvailable();
        if (known != null && !known.exists(houseId)) {
            throw Problem.notFound("house", houseId);
        }
    }

    private Share share(Account account, HeldRole role) {
        return new Share(
                account.id(),
                account.account(),
                account.displayName(),
                role.role(),
                role.endsOn(),
                !role.heldOn(firmDay.today()));
    }
}
