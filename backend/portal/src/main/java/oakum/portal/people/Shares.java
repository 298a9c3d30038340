package oakum.portal.people;

import java.util.List;
import java.util.Locale;
import java.util.UUID;
import oakum.portal.http.Problem;
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

    Shares(AccountRows accounts, Access access, Audit audit, ObjectProvider<KnownHouses> houses) {
        this.accounts = accounts;
        this.access = access;
        this.audit = audit;
        this.houses = houses;
    }

    /** A role that somebody holds for the house. */
    record Share(UUID personId, String account, String displayName, Role role) {}

    /** Whoever may see the house may see who else may. */
    @Transactional(readOnly = true)
    List<Share> of(String houseId) {
        access.require(Permission.VIEW_HOUSE, houseId);
        requireHouse(houseId);
        return accounts.findByHouse(houseId).stream()
                .flatMap(account -> account.roles().stream()
                        .filter(role -> houseId.equals(role.houseId()))
                        .map(HeldRole::role)
                        .sorted()
                        .map(role -> share(account, role)))
                .toList();
    }

    @Transactional
    Share give(String houseId, String account, Role role) {
        access.require(Permission.SHARE_HOUSE, houseId);
        requireHouse(houseId);
        Account person = accounts.findByAccount(account.strip().toLowerCase(Locale.ROOT))
                .orElseThrow(() -> Problem.unprocessable(
                        "account-unknown", "account", "There is no account \"" + account + "\"."));
        if (person.roles().add(new HeldRole(role, houseId))) {
            audit.record(
                    "house-shared",
                    houseId,
                    "Shared with " + person.displayName() + " as " + role.label() + ".",
                    "/api/v1/houses/" + houseId + "/shares");
        }
        AccessImpl.forget();
        return share(person, role);
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

    private static Share share(Account account, Role role) {
        return new Share(account.id(), account.account(), account.displayName(), role);
    }
}
