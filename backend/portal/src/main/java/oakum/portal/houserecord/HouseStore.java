package oakum.portal.houserecord;

import java.time.Clock;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import oakum.physics.weather.WeatherShelves;
import oakum.portal.http.EntityTag;
import oakum.portal.http.Page;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Permission;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.databind.JsonNode;

/** Opens, changes and lists houses. */
@Service
class HouseStore implements Houses {
    private static final Pattern CODE = Pattern.compile("[A-Z][A-Z0-9-]{0,15}");

    private final HouseRows rows;
    private final RecordStore record;
    private final RevisionRows revisions;
    private final Access access;
    private final Clock clock;

    HouseStore(HouseRows rows, RecordStore record, RevisionRows revisions, Access access, Clock clock) {
        this.rows = rows;
        this.record = record;
        this.revisions = revisions;
        this.access = access;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public HouseView find(String id) {
        access.require(Permission.VIEW_HOUSE, id);
        return view(rows.findById(id).orElseThrow(() -> Problem.notFound("house", id)));
    }

    @Override
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public List<HouseView> visible() {
        return after("", Limit.unlimited());
    }

    @Override
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Page<HouseView> page(@Nullable String after, int limit) {
        int size = Math.min(Math.max(limit, 1), 200);
        List<HouseView> found = new ArrayList<>(after(after == null ? "" : after, Limit.of(size + 1)));
        String next = null;
        if (found.size() > size) {
            found.remove(size);
            next = found.get(size - 1).id();
        }
        return new Page<>(found, next);
    }

    private List<HouseView> after(String after, Limit limit) {
        List<House> houses =
                access.seesAllHouses() ? rows.after(after, limit) : rows.after(after, access.sharedHouses(), limit);
        return houses.stream().map(this::view).toList();
    }

    @Override
    @Transactional
    public HouseView create(String id, HouseMeasures measures, String reason) {
        access.require(Permission.EDIT_RECORD);
        if (!CODE.matcher(id).matches()) {
            throw Problem.unprocessable(
                    "house-code",
                    "id",
                    "A house's code is a capital letter and up to 15 more capitals, digits or hyphens: H1.");
        }
        requireKnown(measures);
        if (rows.existsById(id)) {
            throw Problem.conflict("house-exists", "There is a house " + id + " already; take another code.");
        }
        House house = rows.saveAndFlush(new House(id, clock.instant()));
        record.add(house, PartKind.HOUSE, measures, RecordStore.requireReason(reason), null);
        return view(house);
    }

    @Transactional
    HouseView create(String id, JsonNode measures, @Nullable String reason) {
        access.require(Permission.EDIT_RECORD);
        return create(id, read(measures), reason == null || reason.isBlank() ? "opened" : reason);
    }

    @Transactional
    HouseView change(String id, JsonNode measures, @Nullable String ifMatch, @Nullable String reason) {
        access.require(Permission.EDIT_RECORD, id);
        House house = record.locked(id);
        EntityTag.require(ifMatch, house.version());
        HouseMeasures read = read(measures);
        requireKnown(read);
        record.add(
                house,
                PartKind.HOUSE,
                read,
                RecordStore.requireReason(reason),
                revisions.latest(id, PartKind.HOUSE).orElseThrow());
        return view(house);
    }

    private static HouseMeasures read(JsonNode measures) {
        return (HouseMeasures) StrictReader.read(PartKind.HOUSE, measures);
    }

    /** Refuses what points at something that is not there. */
    private static void requireKnown(HouseMeasures measures) {
        try {
            ZoneId.of(measures.timeZone());
        } catch (DateTimeException e) {
            throw Problem.unprocessable(
                    "time-zone",
                    "house.timeZone",
                    "\"" + measures.timeZone() + "\" is no time zone of the tz database, such as America/Denver.");
        }
        String weather = measures.weatherHash();
        if (weather != null && WeatherShelves.find(weather).isEmpty()) {
            throw Problem.unprocessable(
                    "unknown-weather",
                    "house.weatherHash",
                    "\"" + weather + "\" is the content hash of no weather year that is kept; add the year first.");
        }
    }

    private HouseView view(House house) {
        HouseMeasures measures = (HouseMeasures) revisions
                .find(house.id(), PartKind.HOUSE, house.measuresRevision())
                .orElseThrow()
                .document();
        List<String> actions = new ArrayList<>();
        if (access.may(Permission.EDIT_RECORD, house.id())) {
            actions.add("change-house");
            actions.add("save-part");
        }
        if (access.may(Permission.EDIT_PROOF, house.id())) {
            actions.add("make-proof");
        }
        if (access.may(Permission.EDIT_DECISION, house.id())) {
            actions.add("open-decision");
        }
        if (access.may(Permission.SHARE_HOUSE, house.id())) {
            actions.add("share-house");
        }
        return HouseView.of(house, measures, actions);
    }
}
