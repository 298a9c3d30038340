package oakum.portal.site;

import static java.time.ZoneOffset.UTC;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import oakum.portal.http.EntityTag;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Audit;
import oakum.portal.people.Permission;
import oakum.portal.people.Role;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Loose ends: open items with an owner and a day. */
@Service
@Transactional
public class LooseEnds {
    private final JdbcClient jdbc;
    private final Photos photos;
    private final HouseAccess house;
    private final Access access;
    private final Audit audit;
    private final Clock clock;

    LooseEnds(JdbcClient jdbc, Photos photos, HouseAccess house, Access access, Audit audit, Clock clock) {
        this.jdbc = jdbc;
        this.photos = photos;
        this.house = house;
        this.access = access;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * The loose ends of a house, open ones first, the earliest day first.
     *
     * @param ownerRole only those of this role, or null
     * @param open only open ones
     */
    @Transactional(readOnly = true)
    public List<LooseEndShown> list(String houseId, @Nullable Role ownerRole, boolean open) {
        house.require(Permission.VIEW_HOUSE, houseId);
        LocalDate today = house.today(houseId);
        return jdbc.sql("""
                        select * from site.loose_end
                        where house_id = :house and (:role::text is null or owner_role = :role)
                            and (closed_at is null or not :open)
                        order by closed_at is not null, due_on, opened_at
                        """)
                .param("house", houseId)
                .param("role", ownerRole == null ? null : ownerRole.name())
                .param("open", open)
                .query((row, n) -> shown(row, today))
                .list();
    }

    /** The open loose ends of every house that the caller may see, the earliest day first; at most 500. */
    @Transactional(readOnly = true)
    public List<LooseEndShown> listAll(@Nullable Role ownerRole) {
        Set<String> shared = access.sharedHouses();
        Map<String, LocalDate> days = new HashMap<>();
        return jdbc.sql("""
                        select * from site.loose_end
                        where (:all or house_id = any (string_to_array(:shared, '|')))
                            and (:role::text is null or owner_role = :role) and closed_at is null
                        order by due_on, opened_at limit 500
                        """)
                .param("all", access.seesAllHouses())
                .param("shared", String.join("|", shared))
                .param("role", ownerRole == null ? null : ownerRole.name())
                .query((row, n) -> shown(row, days.computeIfAbsent(row.getString("house_id"), house::today)))
                .list();
    }

    /**
     * One loose end.
     *
     * @throws Problem 404
     */
    @Transactional(readOnly = true)
    public LooseEndShown get(String houseId, UUID id) {
        house.require(Permission.VIEW_HOUSE, houseId);
        return find(houseId, id);
    }

    /** Opens one that a person saw. */
    public LooseEndShown open(String houseId, NewLooseEnd seen) {
        house.require(Permission.ANSWER_CHECK, houseId);
        UUID id = raise(new RaisedLooseEnd(
                houseId,
                seen.title().strip(),
                seen.because() == null ? "" : seen.because().strip(),
                seen.ownerRole(),
                seen.dueOn(),
                LooseEndOrigin.PERSON,
                "",
                Boolean.TRUE.equals(seen.wantsAfterPhoto())));
        return find(houseId, id);
    }

    /**
     * Opens one for something that was found, in the finder's transaction, unless one of that key is open.
     *
     * @return the open loose end
     */
    public UUID raise(RaisedLooseEnd found) {
        UUID id = UUID.randomUUID();
        int made = jdbc.sql("""
                        insert into site.loose_end
                            (id, house_id, title, because, owner_role, due_on, origin, origin_key, wants_after_photo,
                             opened_by, opened_at, version)
                        values (:id, :house, :title, :because, :role, :due, :origin, :key, :photo, :by, :at, 1)
                        on conflict (house_id, origin, origin_key) where closed_at is null and origin_key <> ''
                            do nothing
                        """)
                .param("id", id)
                .param("house", found.houseId())
                .param("title", found.title())
                .param("because", found.because())
                .param("role", found.ownerRole().name())
                .param("due", found.dueOn())
                .param("origin", found.origin().name())
                .param("key", found.originKey())
                .param("photo", found.wantsAfterPhoto())
                .param("by", access.caller().displayName())
                .param("at", clock.instant().atOffset(UTC))
                .update();
        if (made == 1) {
            audit.record(
                    "loose-end-opened",
                    found.houseId(),
                    found.title() + " Asked of the " + found.ownerRole().label() + " by " + found.dueOn() + ".",
                    path(found.houseId(), id));
            return id;
        }
        return jdbc.sql("""
                        select id from site.loose_end
                        where house_id = :house and origin = :origin and origin_key = :key and closed_at is null
                        """)
                .param("house", found.houseId())
                .param("origin", found.origin().name())
                .param("key", found.originKey())
                .query(UUID.class)
                .single();
    }

    /**
     * Gives one to another role or another day.
     *
     * @throws Problem 404, 412, 428; 409 {@code loose-end-closed}
     */
    public LooseEndShown change(String houseId, UUID id, @Nullable String ifMatch, LooseEndChange change) {
        requireMayChange(houseId, id);
        LooseEndShown before = requireOpen(houseId, id, ifMatch);
        write(
                """
                        update site.loose_end
                        set title = :title, owner_role = :role, due_on = :due, version = version + 1
                        where id = :id and version = :version
                        """,
                before,
                ifMatch,
                statement -> statement
                        .param("title", change.title().strip())
                        .param("role", change.ownerRole().name())
                        .param("due", change.dueOn()));
        audit.record(
                "loose-end-changed",
                houseId,
                change.title().strip() + " Asked of the " + change.ownerRole().label() + " by " + change.dueOn() + ".",
                path(houseId, id));
        return find(houseId, id);
    }

    /**
     * Closes one.
     *
     * @throws Problem 404, 412, 428; 409 {@code loose-end-closed}; 422 {@code after-photo-missing}, {@code unknown-photo}
     */
    public LooseEndShown close(String houseId, UUID id, @Nullable String ifMatch, LooseEndClosing closing) {
        requireMayChange(houseId, id);
        LooseEndShown before = requireOpen(houseId, id, ifMatch);
        UUID photo = closing.afterPhoto();
        if (photo != null) {
            photos.require(houseId, List.of(photo));
        } else if (before.wantsAfterPhoto()) {
            throw Problem.unprocessable(
                    "after-photo-missing", "afterPhoto", "This loose end is closed with a photo of how it is now.");
        }
        write(
                """
                        update site.loose_end
                        set closed_by = :by, closed_at = :at, close_reason = :reason, as_left = :asLeft,
                            after_photo = :photo, version = version + 1
                        where id = :id and version = :version
                        """,
                before,
                ifMatch,
                statement -> statement
                        .param("by", access.caller().displayName())
                        .param("at", clock.instant().atOffset(UTC))
                        .param("reason", closing.reason().strip())
                        .param(
                                "asLeft",
                                closing.asLeft() == null
                                        ? null
                                        : closing.asLeft().strip())
                        .param("photo", photo));
        audit.record(
                "loose-end-closed",
                houseId,
                before.title() + " Closed: " + closing.reason().strip(),
                path(houseId, id));
        return find(houseId, id);
    }

    private void write(
            String sql,
            LooseEndShown before,
            @Nullable String ifMatch,
            java.util.function.UnaryOperator<JdbcClient.StatementSpec> values) {
        int changed = values.apply(jdbc.sql(sql))
                .param("id", before.id())
                .param("version", before.version())
                .update();
        if (changed == 0) {
            // somebody was faster between the reading and the writing
            EntityTag.require(ifMatch, find(before.houseId(), before.id()).version());
        }
    }

    private LooseEndShown requireOpen(String houseId, UUID id, @Nullable String ifMatch) {
        LooseEndShown before = find(houseId, id);
        EntityTag.require(ifMatch, before.version());
        if (before.closed()) {
            throw Problem.conflict("loose-end-closed", "This loose end was closed; open another one.");
        }
        return before;
    }

    /** Whoever works on site may, and whoever it is asked of. */
    private void requireMayChange(String houseId, UUID id) {
        house.require(Permission.VIEW_HOUSE, houseId);
        if (!mayChange(houseId, find(houseId, id).ownerRole())) {
            house.require(Permission.ANSWER_CHECK, houseId);
        }
    }

    private boolean mayChange(String houseId, Role ownerRole) {
        return access.may(Permission.ANSWER_CHECK, houseId)
                || (access.roles(houseId).contains(ownerRole) && access.may(Permission.COMMENT, houseId));
    }

    private LooseEndShown find(String houseId, UUID id) {
        return jdbc.sql("select * from site.loose_end where house_id = :house and id = :id")
                .param("house", houseId)
                .param("id", id)
                .query((row, n) -> shown(row, house.today(houseId)))
                .optional()
                .orElseThrow(() -> Problem.notFound("loose end", id));
    }

    private LooseEndShown shown(ResultSet row, LocalDate today) throws SQLException {
        String houseId = row.getString("house_id");
        LocalDate dueOn = row.getObject("due_on", LocalDate.class);
        Role ownerRole = Role.valueOf(row.getString("owner_role"));
        OffsetDateTime closedAt = row.getObject("closed_at", OffsetDateTime.class);
        boolean closed = closedAt != null;
        return new LooseEndShown(
                row.getObject("id", UUID.class),
                houseId,
                row.getString("title"),
                row.getString("because"),
                ownerRole,
                dueOn,
                !closed && dueOn.isBefore(today),
                LooseEndOrigin.valueOf(row.getString("origin")),
                row.getString("origin_key"),
                row.getBoolean("wants_after_photo"),
                row.getString("opened_by"),
                CoverCheckRecords.instant(row, "opened_at"),
                closed,
                row.getString("closed_by"),
                closedAt == null ? null : closedAt.toInstant(),
                row.getString("close_reason"),
                row.getString("as_left"),
                row.getObject("after_photo", UUID.class),
                row.getLong("version"),
                !closed && mayChange(houseId, ownerRole) ? List.of("change-loose-end", "close-loose-end") : List.of());
    }

    private static String path(String houseId, UUID id) {
        return "/api/v1/houses/" + houseId + "/loose-ends/" + id;
    }
}
