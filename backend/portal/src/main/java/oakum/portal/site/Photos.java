package oakum.portal.site;

import static java.time.ZoneOffset.UTC;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.Collection;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Audit;
import oakum.portal.people.Caller;
import oakum.portal.people.Permission;
import org.springframework.http.HttpStatus;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Photos of a house, kept in the database beside what they belong to, so that a backup has both or neither. */
@Service
@Transactional
public class Photos {
    /** The largest file taken. */
    static final long MOST_BYTES = 15L * 1024 * 1024;

    private static final String COLUMNS =
            "id, house_id, place, card, taken_at, received_at, person, width_px, height_px";

    private final JdbcClient jdbc;
    private final HouseAccess house;
    private final Access access;
    private final Audit audit;
    private final Clock clock;

    Photos(JdbcClient jdbc, HouseAccess house, Access access, Audit audit, Clock clock) {
        this.jdbc = jdbc;
        this.house = house;
        this.access = access;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Keeps a photo; the same id with the same file again changes nothing.
     *
     * @param id made by the device
     * @param sent the file as it came
     * @param place where in the house, may be empty
     * @param card what the location card says, may be empty
     * @param takenAt when the device says it was taken
     * @throws Problem 413 {@code body-too-large}; 422 {@code not-an-image}, {@code image-too-large}; 409
     *     {@code client-id-reused}
     */
    public PhotoShown keep(String houseId, UUID id, byte[] sent, String place, String card, Instant takenAt) {
        house.require(Permission.KEEP_PHOTO, houseId);
        if (sent.length > MOST_BYTES) {
            throw new Problem(
                    HttpStatus.CONTENT_TOO_LARGE,
                    "body-too-large",
                    "A photo may have at most 15 MB. Nothing of it was kept.");
        }
        String sha256 = sha256(sent);
        Optional<PhotoShown> known = known(houseId, id, sha256);
        if (known.isPresent()) {
            return known.get();
        }
        CleanImage clean = CleanImage.of(sent);
        Caller caller = access.caller();
        int kept = jdbc.sql("""
                        insert into site.photo
                            (id, house_id, place, card, sent_sha256, taken_at, received_at, person_id, person, width_px,
                             height_px, image, thumbnail)
                        values (:id, :house, :place, :card, :sha, :takenAt, :receivedAt, :personId, :person, :width,
                            :height, :image, :thumbnail)
                        on conflict (id) do nothing
                        """)
                .param("id", id)
                .param("house", houseId)
                .param("place", place.strip())
                .param("card", card.strip())
                .param("sha", sha256)
                .param("takenAt", takenAt.atOffset(UTC))
                .param("receivedAt", clock.instant().atOffset(UTC))
                .param("personId", caller.personId())
                .param("person", caller.displayName())
                .param("width", clean.widthPx())
                .param("height", clean.heightPx())
                .param("image", clean.jpeg())
                .param("thumbnail", clean.thumbnail())
                .update();
        if (kept == 1) {
            audit.record(
                    "photo-kept",
                    houseId,
                    "A photo was kept" + (place.isBlank() ? "." : ": " + place.strip() + "."),
                    "/api/v1/houses/" + houseId + "/photos/" + id);
        }
        return known(houseId, id, sha256).orElseThrow(() -> reused(id));
    }

    /** Every photo of a house, latest first; at most 500. */
    @Transactional(readOnly = true)
    public List<PhotoShown> list(String houseId) {
        house.require(Permission.VIEW_HOUSE, houseId);
        return jdbc.sql("select " + COLUMNS
                        + " from site.photo where house_id = :house order by taken_at desc limit 500")
                .param("house", houseId)
                .query((row, n) -> shown(row))
                .list();
    }

    /**
     * The picture.
     *
     * @param small whether the thumbnail is enough
     * @return a JPEG
     * @throws Problem 404
     */
    @Transactional(readOnly = true)
    public byte[] picture(String houseId, UUID id, boolean small) {
        house.require(Permission.VIEW_HOUSE, houseId);
        return jdbc.sql("select " + (small ? "thumbnail" : "image")
                        + " from site.photo where id = :id and house_id = :house")
                .param("id", id)
                .param("house", houseId)
                .query((row, n) -> row.getBytes(1))
                .optional()
                .orElseThrow(() -> Problem.notFound("photo", id));
    }

    /**
     * Lets photos pass that the house has.
     *
     * @throws Problem 422 {@code unknown-photo}
     */
    public void require(String houseId, Collection<UUID> ids) {
        for (UUID id : ids) {
            boolean here = jdbc.sql("select true from site.photo where id = :id and house_id = :house")
                    .param("id", id)
                    .param("house", houseId)
                    .query(Boolean.class)
                    .optional()
                    .isPresent();
            if (!here) {
                throw Problem.unprocessable(
                        "unknown-photo", "photos", "There is no photo " + id + " of this house; send the photo first.");
            }
        }
    }

    private Optional<PhotoShown> known(String houseId, UUID id, String sha256) {
        return jdbc.sql("select " + COLUMNS + ", sent_sha256 from site.photo where id = :id")
                .param("id", id)
                .query((row, n) -> {
                    if (!row.getString("house_id").equals(houseId)
                            || !row.getString("sent_sha256").equals(sha256)) {
                        throw reused(id);
                    }
                    return shown(row);
                })
                .optional();
    }

    private static Problem reused(UUID id) {
        return Problem.conflict(
                "client-id-reused",
                "Not kept: " + id + " is the id of another photo. Every photo needs an id of its own.");
    }

    private static PhotoShown shown(ResultSet row) throws SQLException {
        return new PhotoShown(
                row.getObject("id", UUID.class),
                row.getString("house_id"),
                row.getString("place"),
                row.getString("card"),
                CoverCheckRecords.instant(row, "taken_at"),
                CoverCheckRecords.instant(row, "received_at"),
                row.getString("person"),
                row.getInt("width_px"),
                row.getInt("height_px"));
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
