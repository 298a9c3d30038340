package oakum.portal.commissioning;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import oakum.physics.calculation.Verdict;
import oakum.physics.filtration.CleanCurve;
import oakum.portal.houserecord.AirPart;
import oakum.portal.houserecord.HouseRecord;
import oakum.portal.houserecord.Houses;
import oakum.portal.houserecord.Snapshot;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Audit;
import oakum.portal.people.Permission;
import oakum.portal.people.Role;
import oakum.portal.site.LooseEndOrigin;
import oakum.portal.site.LooseEnds;
import oakum.portal.site.Photos;
import oakum.portal.site.RaisedLooseEnd;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.databind.json.JsonMapper;

/** Setting a house to work: what was measured, as-found and as-left, against its design. */
@Service
@Transactional
public class SettingToWork {
    /** Days to mend a misfit where nobody says otherwise: a firm rule, no published source. */
    private static final int DAYS_TO_MEND = 7;

    private final MeasurementRecords records;
    private final SheetComparison comparison;
    private final Houses houses;
    private final HouseRecord record;
    private final Photos photos;
    private final LooseEnds looseEnds;
    private final Access access;
    private final Audit audit;
    private final ApplicationEventPublisher events;
    private final JsonMapper json;
    private final Clock clock;

    SettingToWork(
            MeasurementRecords records,
            SheetComparison comparison,
            Houses houses,
            HouseRecord record,
            Photos photos,
            LooseEnds looseEnds,
            Access access,
            Audit audit,
            ApplicationEventPublisher events,
            JsonMapper json,
            Clock clock) {
        this.records = records;
        this.comparison = comparison;
        this.houses = houses;
        this.record = record;
        this.photos = photos;
        this.looseEnds = looseEnds;
        this.access = access;
        this.audit = audit;
        this.events = events;
        this.json = json;
        this.clock = clock;
    }

    /**
     * The sheets of a house.
     *
     * @throws Problem 404
     */
    @Transactional(readOnly = true)
    public List<SheetListed> list(String houseId) {
        houses.find(houseId);
        List<MeasurementRecords.Kept> all = records.all(houseId);
        return Arrays.stream(Sheet.values())
                .map(sheet -> listed(
                        sheet, all.stream().filter(m -> m.sheet() == sheet).toList()))
                .toList();
    }

    /**
     * One sheet with its design values and every measurement.
     *
     * @throws Problem 404
     */
    @Transactional(readOnly = true)
    public SheetShown get(String houseId, String key) {
        HouseDesign design = design(houseId);
        Sheet sheet = Sheet.of(key);
        return new SheetShown(
                houseId,
                sheet.key(),
                sheet.title(),
                sheet.purpose(),
                sheet.instrument(),
                sheet.steps(),
                design.of(sheet),
                records.all(houseId).stream()
                        .filter(m -> m.sheet() == sheet)
                        .map(m -> shown(houseId, m))
                        .toList(),
                sheet.cautions(),
                SheetShown.SheetUnits.ALL,
                access.may(Permission.MEASURE, houseId) ? List.of("measure") : List.of());
    }

    /**
     * Keeps a tightness test.
     *
     * @throws Problem 403, 404; 409 {@code client-id-reused}
     * @throws oakum.physics.calculation.Refused where the readings cannot be a test
     */
    public MeasurementShown measure(String houseId, TightnessSent sent) {
        access.require(Permission.MEASURE, houseId);
        return keep(houseId, Sheet.TIGHTNESS, "", sent.taken(), sent, design -> comparison.tightness(design, sent));
    }

    /**
     * Keeps a filter drop.
     *
     * @throws Problem 403, 404; 409 {@code client-id-reused}; 422 {@code unknown-filter}, {@code flows-alike}
     */
    public MeasurementShown measure(String houseId, FilterDropSent sent) {
        access.require(Permission.MEASURE, houseId);
        long flows = sent.flows().stream()
                .map(step -> Readings.mean(step.airflowM3PerS()))
                .distinct()
                .count();
        if (flows < 2) {
            throw Problem.unprocessable("flows-alike", "flows", "A curve needs at least two different flows.");
        }
        return keep(
                houseId,
                Sheet.FILTER_DROP,
                "/" + sent.filterId(),
                sent.taken(),
                sent,
                design -> comparison.filterDrop(design, filter(design, sent.filterId()), sent));
    }

    /**
     * Keeps house pressures.
     *
     * @throws Problem 403, 404; 409 {@code client-id-reused}
     */
    public MeasurementShown measure(String houseId, HousePressureSent sent) {
        access.require(Permission.MEASURE, houseId);
        return keep(
                houseId,
                Sheet.HOUSE_PRESSURE,
                "",
                sent.taken(),
                sent,
                design -> comparison.housePressure(design, sent));
    }

    /**
     * Signs an as-left measurement. One that does not pass is signed by the principal only, with a reason. A signed filter
     * drop is the filter's clean mark.
     *
     * @param reason why it is accepted although it does not pass, or null
     * @throws Problem 403, 404; 409 {@code not-as-left}, {@code measurement-signed}; 422 {@code reason-missing}
     */
    public MeasurementShown sign(String houseId, String key, UUID id, @Nullable String reason) {
        access.require(Permission.MEASURE, houseId);
        Sheet sheet = Sheet.of(key);
        MeasurementRecords.Kept kept = records.find(houseId, id)
                .filter(m -> m.sheet() == sheet)
                .orElseThrow(() -> Problem.notFound("measurement", id));
        if (kept.occasion() != Occasion.AS_LEFT) {
            throw Problem.conflict("not-as-left", "Only what was measured as-left is signed.");
        }
        boolean principal = access.roles(houseId).contains(Role.PRINCIPAL);
        String given = reason == null ? "" : reason.strip();
        if (kept.outcome().verdict() != Verdict.PASSES) {
            if (!principal) {
                throw Problem.forbidden(
                        "This measurement " + kept.outcome().verdictLabel() + "; only the principal may accept it.");
            }
            if (given.isEmpty()) {
                throw Problem.unprocessable(
                        "reason-missing", "reason", "A measurement that does not pass is accepted with a reason.");
            }
        }
        Role role = principal ? Role.PRINCIPAL : mayMeasureAs(houseId);
        if (!records.sign(id, role.name(), given, access.caller(), clock.instant())) {
            throw Problem.conflict("measurement-signed", "This measurement is signed already.");
        }
        audit.record(
                "measurement-signed",
                houseId,
                sheet.title() + " was signed: " + kept.outcome().verdictLabel()
                        + (given.isEmpty() ? "." : ", " + given),
                path(houseId, sheet));
        if (sheet == Sheet.FILTER_DROP) {
            events.publishEvent(cleanMark(houseId, json.treeToValue(kept.sent(), FilterDropSent.class)));
        }
        return shown(houseId, records.find(houseId, id).orElseThrow());
    }

    private Role mayMeasureAs(String houseId) {
        return access.roles(houseId).contains(Role.MECHANICAL_CONTRACTOR) ? Role.MECHANICAL_CONTRACTOR : Role.SITE_LEAD;
    }

    private CleanMarkMeasured cleanMark(String houseId, FilterDropSent sent) {
        HouseDesign design = design(houseId);
        double density = design.densityKgPerM3(sent.taken().weather().indoorC());
        double faceArea = HouseDesign.faceAreaM2(filter(design, sent.filterId()));
        CleanCurve curve = SheetComparison.curveOf(sent, faceArea, density);
        FilterDropSent.FlowStep highest = SheetComparison.highest(sent);
        return new CleanMarkMeasured(
                houseId,
                sent.filterId(),
                Readings.mean(highest.airflowM3PerS()),
                Readings.mean(highest.dropPa()),
                curve.linearPaSPerM(),
                curve.squarePaS2PerM2(),
                faceArea,
                density,
                sent.taken().takenAt());
    }

    private interface Comparing {
        Outcome with(HouseDesign design);
    }

    private MeasurementShown keep(
            String houseId, Sheet sheet, String subKey, Taken taken, Record sent, Comparing comparing) {
        UUID id = taken.clientId();
        HouseDesign design = design(houseId);
        if (!records.same(houseId, sheet, id, sent)) {
            photos.require(houseId, taken.photoIds());
            Outcome outcome = comparing.with(design);
            if (!records.insert(houseId, sheet, taken, sent, outcome, access.caller(), clock.instant())) {
                throw Problem.conflict(
                        "client-id-reused",
                        "Not kept: " + id
                                + " is the id of another measurement. Every measurement needs an id of its own.");
            }
            audit.record(
                    "measured",
                    houseId,
                    sheet.title() + ", " + taken.occasion().label() + ": " + outcome.verdictLabel() + ".",
                    path(houseId, sheet));
            if (outcome.verdict() == Verdict.FAILS) {
                raise(houseId, sheet, subKey, outcome, design);
            }
        }
        return shown(houseId, records.find(houseId, id).orElseThrow());
    }

    private void raise(String houseId, Sheet sheet, String subKey, Outcome outcome, HouseDesign design) {
        List<String> misfits = new ArrayList<>();
        for (Compared value : outcome.values()) {
            if (value.verdict() == Verdict.FAILS) {
                misfits.add(value.label());
            }
        }
        LocalDate today = LocalDate.now(clock.withZone(ZoneId.of(design.house().timeZone())));
        looseEnds.raise(new RaisedLooseEnd(
                houseId,
                sheet.title() + ": outside the design: " + String.join("; ", misfits) + ".",
                sheet.purpose(),
                sheet.mender(),
                today.plusDays(DAYS_TO_MEND),
                LooseEndOrigin.SETTING_TO_WORK,
                sheet.key() + subKey,
                false));
    }

    private HouseDesign design(String houseId) {
        Snapshot snapshot = record.snapshot(houseId);
        return new HouseDesign(houses.find(houseId), snapshot.parts().air(), snapshot.proofs(), record);
    }

    private static AirPart.Filter filter(HouseDesign design, String id) {
        AirPart.Filter filter = design.filter(id);
        if (filter == null) {
            throw Problem.unprocessable(
                    "unknown-filter", "filterId", "The Air part of this house has no filter \"" + id + "\".");
        }
        return filter;
    }

    private static SheetListed listed(Sheet sheet, List<MeasurementRecords.Kept> latestFirst) {
        MeasurementRecords.Kept leading = latestFirst.stream()
                .filter(m -> m.occasion() == Occasion.AS_LEFT)
                .findFirst()
                .orElse(latestFirst.isEmpty() ? null : latestFirst.get(0));
        return leading == null
                ? new SheetListed(sheet.key(), sheet.title(), 0, null, null, null, null, false)
                : new SheetListed(
                        sheet.key(),
                        sheet.title(),
                        latestFirst.size(),
                        leading.occasion(),
                        leading.outcome().verdict(),
                        leading.outcome().verdictLabel(),
                        leading.takenAt(),
                        leading.signature() != null);
    }

    private MeasurementShown shown(String houseId, MeasurementRecords.Kept kept) {
        boolean open = kept.occasion() == Occasion.AS_LEFT && kept.signature() == null;
        boolean maySign = access.may(Permission.MEASURE, houseId)
                && (kept.outcome().verdict() == Verdict.PASSES
                        || access.roles(houseId).contains(Role.PRINCIPAL));
        return new MeasurementShown(
                kept.id(),
                kept.sheet().key(),
                kept.occasion(),
                kept.occasion().label(),
                kept.takenAt(),
                kept.receivedAt(),
                kept.person(),
                kept.sent(),
                kept.outcome(),
                kept.signature(),
                kept.sheet().cautions(),
                open && maySign ? List.of("sign-measurement") : List.of());
    }

    private static String path(String houseId, Sheet sheet) {
        return "/api/v1/houses/" + houseId + "/setting-to-work/" + sheet.key();
    }
}
