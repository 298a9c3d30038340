package oakum.portal.material;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oakum.physics.calculation.Canonical;
import oakum.physics.material.Material;
import oakum.physics.material.MaterialInput;
import oakum.physics.material.MaterialLibrary;
import oakum.physics.material.OwnMaterial;
import oakum.portal.calculation.Calculations;
import oakum.portal.http.Cursor;
import oakum.portal.http.Page;
import oakum.portal.http.Problem;
import oakum.portal.material.MaterialRows.Kept;
import oakum.portal.people.Access;
import oakum.portal.people.Audit;
import oakum.portal.people.Permission;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The materials that layers may name: those that come with the portal, and the firm's own. */
@Service
class Materials {
    private static final int MOST_LISTED = 500;

    private final MaterialRows rows;
    private final Calculations calculations;
    private final Access access;
    private final Audit audit;
    private final Clock clock;

    Materials(MaterialRows rows, Calculations calculations, Access access, Audit audit, Clock clock) {
        this.rows = rows;
        this.calculations = calculations;
        this.access = access;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * A material that was sent.
     *
     * @param added false where the same content was there already
     */
    record Sent(MaterialJson material, boolean added) {}

    /** Those that come with the portal in their printed order, then the firm's own by name. */
    @Transactional(readOnly = true)
    Page<MaterialJson> page(@Nullable String cursor, int limit, boolean all) {
        access.caller();
        int size = Math.max(1, Math.min(MOST_LISTED, limit));
        Page<Kept> own = Cursor.page(
                rows.list(Cursor.sortKey(cursor), all, size + 1),
                size,
                kept -> MaterialRows.sortKey(kept.id(), kept.typed()));
        List<MaterialJson> items = new ArrayList<>();
        if (cursor == null || cursor.isEmpty()) {
            MaterialLibrary.all().forEach(material -> items.add(bundled(material)));
        }
        own.items().forEach(kept -> items.add(own(kept)));
        return new Page<>(items, own.next());
    }

    /**
     * One material, offered or not.
     *
     * @throws Problem 404
     */
    @Transactional(readOnly = true)
    MaterialJson get(String id) {
        access.caller();
        return isBundled(id)
                ? bundled(MaterialLibrary.require("id", id))
                : rows.find(id).map(this::own).orElseThrow(() -> Problem.notFound("material", id));
    }

    /**
     * Keeps an own material under its content and offers it in place of an earlier one of the same short name. Sent again,
     * nothing doubles; one that was withdrawn or superseded is offered again.
     *
     * @throws Problem 403, and 409 where two contents would share an id
     * @throws oakum.physics.calculation.Refused naming the material and the value
     */
    @Transactional
    Sent add(MaterialInput typed) {
        access.requireAnywhere(Permission.KEEP_MATERIALS);
        OwnMaterial own = OwnMaterial.of(typed);
        String id = own.material().id();
        rows.lock(own.name());
        Optional<Kept> before = rows.find(id);
        if (before.isPresent() && !Canonical.lines(before.get().typed()).equals(Canonical.lines(own.typed()))) {
            throw Problem.conflict(
                    "already-there",
                    "There is another material under the id " + id + " already. Take another short name.");
        }
        if (before.isPresent() && before.get().offered()) {
            return new Sent(own(before.get()), false);
        }
        rows.supersede(own.name(), id);
        if (before.isEmpty()) {
            rows.add(own, access.caller().displayName(), now());
        } else {
            rows.offer(id);
        }
        record(before.isEmpty() ? "material-added" : "material-offered", own.typed(), id);
        return new Sent(own(rows.find(id).orElseThrow()), before.isEmpty());
    }

    /**
     * Offers an own material no longer; it stays readable and can still be computed with. Again, nothing changes.
     *
     * @throws Problem 403, 404, and 409 where it comes with the portal
     */
    @Transactional
    MaterialJson withdraw(String id) {
        access.requireAnywhere(Permission.KEEP_MATERIALS);
        if (isBundled(id)) {
            throw Problem.conflict(
                    "material-bundled", "\"" + id + "\" comes with the portal; only own materials can be withdrawn.");
        }
        Kept found = rows.find(id).orElseThrow(() -> Problem.notFound("material", id));
        rows.lock(found.typed().id());
        Kept kept = rows.find(id).orElseThrow();
        if (kept.withdrawnAt() == null) {
            rows.withdraw(id, access.caller().displayName(), now());
            record("material-withdrawn", kept.typed(), id);
        }
        return own(rows.find(id).orElseThrow());
    }

    /** What this person may do with the list. */
    List<String> actions() {
        return mayKeep() ? List.of("add-material") : List.of();
    }

    private boolean mayKeep() {
        return access.mayAnywhere(Permission.KEEP_MATERIALS);
    }

    /** As fine as the database keeps it. */
    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }

    private void record(String act, MaterialInput typed, String id) {
        audit.record(
                act,
                null,
                "Material " + typed.label() + ", " + id + ": " + typed.source() + ".",
                "/api/v1/materials/" + id);
    }

    private static boolean isBundled(String id) {
        return MaterialLibrary.all().stream().anyMatch(material -> material.id().equals(id));
    }

    private MaterialJson bundled(Material material) {
        return new MaterialJson(
                material.id(),
                material.label(),
                false,
                true,
                Known.of(material, calculations.toJson(material.values())),
                material.values(),
                null,
                null,
                null,
                null,
                null,
                List.of());
    }

    private MaterialJson own(Kept kept) {
        Material material = OwnMaterial.of(kept.typed()).material();
        return new MaterialJson(
                material.id(),
                material.label(),
                true,
                kept.offered(),
                Known.of(material, calculations.toJson(kept.typed())),
                kept.typed(),
                kept.addedBy(),
                kept.addedAt(),
                kept.supersededBy(),
                kept.withdrawnBy(),
                kept.withdrawnAt(),
                kept.offered() && mayKeep() ? List.of("withdraw-material") : List.of());
    }
}
