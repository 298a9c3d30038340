package oakum.portal.site;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Labelled;
import oakum.portal.calculation.FieldJson.UnitJson;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Audit;
import oakum.portal.people.Caller;
import oakum.portal.people.Permission;
import oakum.portal.people.Role;
import oakum.portal.site.CoverCheckShown.CheckRowShown;
import oakum.portal.site.CoverCheckShown.CheckSignature;
import oakum.portal.site.CoverCheckShown.NumberAsked;
import oakum.portal.site.CoverCheckShown.RowAccepted;
import oakum.portal.site.CoverCheckShown.RowAnswerShown;
import oakum.portal.site.CoverChecksOfHouse.CoverCheckOffered;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Cover checks: work that must not be hidden before it is looked at. */
@Service
@Transactional
public class CoverChecks {
    /** Days to mend what is not right where nobody says otherwise: a firm rule, no published source. */
    private static final int DAYS_TO_MEND = 7;

    private final CoverCheckRecords records;
    private final Photos photos;
    private final LooseEnds looseEnds;
    private final ApprovalsBehind approvals;
    private final HouseAccess house;
    private final Access access;
    private final Audit audit;
    private final Clock clock;

    CoverChecks(
            CoverCheckRecords records,
            Photos photos,
            LooseEnds looseEnds,
            ApprovalsBehind approvals,
            HouseAccess house,
            Access access,
            Audit audit,
            Clock clock) {
        this.records = records;
        this.photos = photos;
        this.looseEnds = looseEnds;
        this.approvals = approvals;
        this.house = house;
        this.access = access;
        this.audit = audit;
        this.clock = clock;
    }

    /** Everything about one check as it stands at one moment. */
    private record Standing(
            CoverCheckRecords.Head head,
            List<CheckRow> rows,
            Map<String, List<GivenAnswer>> answers,
            List<RowStop> stops,
            List<LapsedApproval> lapsed,
            String copyCode,
            List<CoverCheckRecords.Signature> signatures) {

        /** The principal's signature covers every row; the site lead's opens a check without a principal's row. */
        Role opener() {
            return rows.stream().anyMatch(row -> row.signedBy() == Role.PRINCIPAL) ? Role.PRINCIPAL : Role.SITE_LEAD;
        }

        boolean signed() {
            return signatures.stream()
                    .anyMatch(
                            s -> s.copyCode().equals(copyCode) && (s.role() == Role.PRINCIPAL || s.role() == opener()));
        }

        int answered() {
            return (int)
                    rows.stream().filter(row -> answers.containsKey(row.id())).count();
        }

        CoverCheckState state() {
            boolean notRight = rows.stream()
                    .map(row -> GivenAnswer.counting(answers.getOrDefault(row.id(), List.of())))
                    .anyMatch(counting -> counting.isPresent()
                            && counting.get().judged() == RowAnswer.NOT_RIGHT
                            && counting.get().acceptance() == null);
            if (notRight || !lapsed.isEmpty()) {
                return CoverCheckState.STOPPED;
            }
            if (!stops.isEmpty()) {
                return CoverCheckState.OPEN;
            }
            return signed() ? CoverCheckState.SIGNED : CoverCheckState.TO_SIGN;
        }

        @Nullable
        Role waitsFor() {
            return state() == CoverCheckState.SIGNED ? null : opener();
        }
    }

    /** The checks of a house, in building order, and those it might still get. */
    @Transactional(readOnly = true)
    public CoverChecksOfHouse list(String houseId) {
        house.require(Permission.VIEW_HOUSE, houseId);
        List<CoverCheckRecords.Head> heads = records.heads(houseId);
        List<LapsedApproval> lapsed = approvals.lapsed(
                houseId,
                heads.stream().flatMap(head -> head.dependsOn().stream()).toList());
        List<CoverCheckListed> listed = heads.stream()
                .map(head -> listed(standing(houseId, head, lapsed)))
                .toList();
        List<String> made = listed.stream().map(CoverCheckListed::code).toList();
        List<CoverCheckOffered> offered = CoverCheckTemplate.ALL.values().stream()
                .filter(template -> !made.contains(template.code()))
                .map(t -> new CoverCheckOffered(
                        t.code(), t.title(), t.coveredBy(), t.rows().size()))
                .toList();
        boolean mayMake = !offered.isEmpty() && access.may(Permission.ANSWER_CHECK, houseId);
        return new CoverChecksOfHouse(listed, offered, mayMake ? List.of("make-cover-check") : List.of());
    }

    /**
     * One check with all its rows.
     *
     * @throws Problem 404
     */
    @Transactional(readOnly = true)
    public CoverCheckShown get(String houseId, String code) {
        house.require(Permission.VIEW_HOUSE, houseId);
        return shown(houseId, standing(houseId, head(houseId, code)));
    }

    /**
     * Gives the house a check from its template, with the template's words as they are today.
     *
     * @throws Problem 422 {@code unknown-cover-check}; 409 {@code cover-check-exists}
     */
    public CoverCheckShown make(String houseId, String code) {
        house.require(Permission.ANSWER_CHECK, houseId);
        CoverCheckTemplate template = CoverCheckTemplate.ALL.get(code);
        if (template == null) {
            throw Problem.unprocessable(
                    "unknown-cover-check",
                    "code",
                    "There is no template \"" + code + "\"; there are "
                            + String.join(", ", CoverCheckTemplate.ALL.keySet()) + ".");
        }
        if (!records.insert(houseId, template, access.caller().displayName(), clock.instant())) {
            throw Problem.conflict("cover-check-exists", "House " + houseId + " has this cover check already.");
        }
        audit.record("cover-check-made", houseId, name(code) + " was added.", path(houseId, code));
        return get(houseId, code);
    }

    /**
     * Repeats a row at another place, such as a further moisture reading.
     *
     * @param templateRow the row to repeat
     * @param place where in the house
     * @throws Problem 404 for an unknown row; 409 {@code row-exists}
     */
    public CoverCheckShown addPlace(String houseId, String code, String templateRow, String place) {
        house.require(Permission.ANSWER_CHECK, houseId);
        lock(houseId, code);
        CheckRow like = records.rows(houseId, code).stream()
                .filter(row -> row.templateRow().equals(templateRow) && row.place() != null)
                .reduce((first, later) -> later)
                .orElseThrow(() -> Problem.notFound("row that repeats by place", templateRow));
        if (!records.insert(houseId, code, like.at(place.strip(), like.position()))) {
            throw Problem.conflict("row-exists", "This row has the place \"" + place.strip() + "\" already.");
        }
        audit.record("row-added", houseId, name(code) + ": " + like.lookAt() + " also at " + place.strip() + ".");
        return get(houseId, code);
    }

    /**
     * Keeps an answer. The same id again changes nothing. Two people who answer one row without knowing of each other are
     * both kept; the earliest counts. A look that names the answer it repeats, or the same person's later look, is a new
     * round and counts instead.
     *
     * @return the check after it
     * @throws Problem 404; 409 {@code client-id-reused}; 422 {@code value-missing}, {@code value-not-asked},
     *     {@code outside-limits}, {@code reason-missing}, {@code unknown-photo}, {@code unknown-answer}
     */
    public CoverCheckShown answer(String houseId, String code, String rowId, RowAnswerSent sent) {
        house.require(Permission.ANSWER_CHECK, houseId);
        lock(houseId, code);
        CheckRow row = row(houseId, code, rowId);
        List<GivenAnswer> before = records.answers(houseId, code).getOrDefault(rowId, List.of());
        GivenAnswer known = before.stream()
                .filter(answer -> answer.id().equals(sent.clientId()))
                .findFirst()
                .orElse(null);
        if (known != null) {
            requireSame(known, sent);
            return get(houseId, code);
        }
        requireSound(row, sent);
        photos.require(houseId, sent.photoIds());
        Caller caller = access.caller();
        GivenAnswer answer = new GivenAnswer(
                sent.clientId(),
                rowId,
                round(before, sent, caller),
                sent.answer(),
                row.judged(sent.answer(), sent.value()),
                sent.value(),
                sent.noteText(),
                sent.repeatOf(),
                sent.takenAt(),
                clock.instant(),
                caller.personId(),
                caller.displayName(),
                sent.photoIds(),
                null);
        if (!records.insert(houseId, code, answer)) {
            throw reused(sent.clientId());
        }
        audit.record("row-answered", houseId, sentence(code, row, answer), path(houseId, code));
        if (answer.judged() == RowAnswer.NOT_RIGHT) {
            raise(houseId, code, row, answer, sent.fix());
        }
        return get(houseId, code);
    }

    /**
     * The principal lets a row pass as it is.
     *
     * @throws Problem 403 for anyone else; 409 {@code row-unanswered}
     */
    public CoverCheckShown accept(String houseId, String code, String rowId, String reason) {
        house.require(Permission.SIGN_CHECK, houseId);
        if (!access.roles(houseId).contains(Role.PRINCIPAL)) {
            throw Problem.forbidden("Only the principal lets a row pass as it is.");
        }
        lock(houseId, code);
        CheckRow row = row(houseId, code, rowId);
        GivenAnswer counting = GivenAnswer.counting(
                        records.answers(houseId, code).getOrDefault(rowId, List.of()))
                .orElseThrow(() -> Problem.conflict("row-unanswered", "Nobody has looked at this row yet."));
        records.accept(counting.id(), reason.strip(), access.caller(), clock.instant());
        audit.record(
                "row-accepted",
                houseId,
                name(code) + ": " + at(row) + row.lookAt() + " accepted as it is: " + reason.strip(),
                path(houseId, code));
        return get(houseId, code);
    }

    /**
     * Signs what was shown.
     *
     * @param copyCode the code of what the person saw
     * @throws Problem 409 {@code cover-check-stopped} with the rows and approvals that stop it, {@code not-what-stands}
     */
    public CoverCheckShown sign(String houseId, String code, String copyCode) {
        house.require(Permission.SIGN_CHECK, houseId);
        lock(houseId, code);
        Standing standing = standing(houseId, head(houseId, code));
        if (!standing.stops().isEmpty() || !standing.lapsed().isEmpty()) {
            throw new Problem(HttpStatus.CONFLICT, "cover-check-stopped", stopSentence(code, standing))
                    .with("rows", standing.stops())
                    .with("lapsed", standing.lapsed());
        }
        if (!standing.copyCode().equals(copyCode.strip())) {
            throw Problem.conflict(
                            "not-what-stands", "Not signed: the rows changed since you read them. Read them again.")
                    .with("copyCode", standing.copyCode());
        }
        Set<Role> held = access.roles(houseId);
        Role role = held.contains(Role.PRINCIPAL) ? Role.PRINCIPAL : Role.SITE_LEAD;
        if (records.sign(houseId, code, role, copyCode.strip(), access.caller(), clock.instant())) {
            audit.record(
                    "cover-check-signed",
                    houseId,
                    name(code) + " was signed as " + role.label() + ", copy code " + copyCode.strip() + ".",
                    path(houseId, code));
        }
        return get(houseId, code);
    }

    private void raise(
            String houseId, String code, CheckRow row, GivenAnswer answer, RowAnswerSent.@Nullable FixAsked fix) {
        String reason = Stops.notRight(row, answer);
        Role owner = row.seenBy().contains(SeenBy.MECHANICAL_CONTRACTOR) ? Role.MECHANICAL_CONTRACTOR : Role.SITE_LEAD;
        looseEnds.raise(new RaisedLooseEnd(
                houseId,
                fix == null ? name(code) + ", " + at(row) + reason : fix.what().strip(),
                row.because(),
                fix == null ? owner : fix.ownerRole(),
                fix == null ? house.today(houseId).plusDays(DAYS_TO_MEND) : fix.dueOn(),
                LooseEndOrigin.COVER_CHECK,
                code + "/" + row.id(),
                true));
    }

    private static int round(List<GivenAnswer> before, RowAnswerSent sent, Caller caller) {
        UUID repeatOf = sent.repeatOf();
        if (repeatOf != null) {
            return before.stream()
                            .filter(answer -> answer.id().equals(repeatOf))
                            .findFirst()
                            .orElseThrow(() -> Problem.unprocessable(
                                    "unknown-answer", "repeatOf", "This row has no answer " + repeatOf + "."))
                            .round()
                    + 1;
        }
        // nobody is in two minds unknowingly: one's own later look is a new round
        return before.stream()
                .filter(answer -> answer.personId().equals(caller.personId())
                        && answer.takenAt().isBefore(sent.takenAt()))
                .mapToInt(answer -> answer.round() + 1)
                .max()
                .orElse(1);
    }

    private static void requireSame(GivenAnswer known, RowAnswerSent sent) {
        boolean same = known.answer() == sent.answer()
                && Objects.equals(known.value(), sent.value())
                && known.note().equals(sent.noteText())
                && known.takenAt().equals(sent.takenAt().truncatedTo(java.time.temporal.ChronoUnit.MICROS))
                && known.photos().equals(sent.photoIds());
        if (!same) {
            throw reused(sent.clientId());
        }
    }

    private static Problem reused(UUID clientId) {
        return Problem.conflict(
                "client-id-reused",
                "Not kept: " + clientId + " is the id of another answer. Every answer needs an id of its own.");
    }

    private static void requireSound(CheckRow row, RowAnswerSent sent) {
        CheckRow.Asked number = row.number();
        Double value = sent.value();
        if (number == null && value != null) {
            throw Problem.unprocessable("value-not-asked", "value", "This row asks for no number.");
        }
        if (number != null && value == null && sent.answer() == RowAnswer.RIGHT) {
            throw Problem.unprocessable(
                    "value-missing",
                    "value",
                    "This row is right only with its number: " + number.quantity() + " in "
                            + number.unit().si().symbol() + ".");
        }
        if (number != null && value != null && !(value >= number.lowest() && value <= number.highest())) {
            throw OutsideLimits.of(
                    "value", number.quantity(), value, number.lowest(), number.highest(), number.unit(), row.source());
        }
        if (sent.answer() == RowAnswer.NOT_HERE && sent.noteText().isEmpty()) {
            throw Problem.unprocessable(
                    "reason-missing", "note", "\"Not in this house\" needs its reason in the note.");
        }
    }

    private void lock(String houseId, String code) {
        if (!records.lock(houseId, code)) {
            throw Problem.notFound("cover check", code);
        }
    }

    private CoverCheckRecords.Head head(String houseId, String code) {
        return records.head(houseId, code).orElseThrow(() -> Problem.notFound("cover check", code));
    }

    private CheckRow row(String houseId, String code, String rowId) {
        return records.rows(houseId, code).stream()
                .filter(row -> row.id().equals(rowId))
                .findFirst()
                .orElseThrow(() -> Problem.notFound("row", rowId));
    }

    private Standing standing(String houseId, CoverCheckRecords.Head head) {
        return standing(houseId, head, approvals.lapsed(houseId, head.dependsOn()));
    }

    private Standing standing(String houseId, CoverCheckRecords.Head head, List<LapsedApproval> lapsedInHouse) {
        List<CheckRow> rows = records.rows(houseId, head.code());
        Map<String, List<GivenAnswer>> answers = records.answers(houseId, head.code());
        return new Standing(
                head,
                rows,
                answers,
                Stops.of(rows, answers),
                lapsedInHouse.stream()
                        .filter(lapsed -> head.dependsOn().contains(lapsed.decision()))
                        .toList(),
                copyCode(houseId, head, rows, answers),
                records.signatures(houseId, head.code()));
    }

    /** Stands for what every row says; a second answer that agrees changes nothing. */
    private static String copyCode(
            String houseId, CoverCheckRecords.Head head, List<CheckRow> rows, Map<String, List<GivenAnswer>> answers) {
        StringBuilder text = new StringBuilder(houseId + " " + head.code() + "\n");
        for (CheckRow row : rows) {
            text.append(row.id()).append('=');
            GivenAnswer.counting(answers.getOrDefault(row.id(), List.of())).ifPresent(answer -> {
                text.append(answer.judged());
                if (answer.value() != null) {
                    text.append(' ').append(Canonical.text(answer.value()));
                }
                if (answer.acceptance() != null) {
                    text.append(" accepted");
                }
            });
            text.append('\n');
        }
        return Canonical.copyCode(text.toString());
    }

    private static CoverCheckListed listed(Standing s) {
        return new CoverCheckListed(
                s.head().code(),
                number(s.head().code()),
                s.head().title(),
                s.head().coveredBy(),
                s.state(),
                s.state().label(),
                s.rows().size(),
                s.answered(),
                s.stops(),
                s.lapsed(),
                s.waitsFor());
    }

    private CoverCheckShown shown(String houseId, Standing s) {
        return new CoverCheckShown(
                houseId,
                s.head().code(),
                number(s.head().code()),
                s.head().title(),
                s.head().coveredBy(),
                s.state(),
                s.state().label(),
                s.copyCode(),
                s.rows().size(),
                s.answered(),
                s.rows().stream()
                        .map(row -> shown(row, s.answers().getOrDefault(row.id(), List.of())))
                        .toList(),
                s.stops(),
                s.lapsed(),
                s.signatures().stream()
                        .map(signature -> new CheckSignature(
                                signature.role(),
                                signature.person(),
                                signature.at(),
                                signature.copyCode(),
                                signature.copyCode().equals(s.copyCode())))
                        .toList(),
                s.waitsFor(),
                s.head().cautions().stream().map(SafetyCaution::caution).toList(),
                actions(houseId, s));
    }

    private List<String> actions(String houseId, Standing s) {
        List<String> actions = new ArrayList<>();
        if (access.may(Permission.ANSWER_CHECK, houseId)) {
            actions.add("answer-row");
            actions.add("add-place");
        }
        if (access.may(Permission.SIGN_CHECK, houseId)) {
            boolean principal = access.roles(houseId).contains(Role.PRINCIPAL);
            if (principal && s.answered() > 0) {
                actions.add("accept-row");
            }
            if (s.state() == CoverCheckState.TO_SIGN) {
                actions.add("sign");
            }
        }
        return actions;
    }

    private static CheckRowShown shown(CheckRow row, List<GivenAnswer> answers) {
        UUID counting = GivenAnswer.counting(answers).map(GivenAnswer::id).orElse(null);
        List<RowAnswerShown> all = answers.stream()
                .map(answer -> shown(answer, answer.id().equals(counting)))
                .toList();
        CheckRow.Asked number = row.number();
        return new CheckRowShown(
                row.id(),
                row.templateRow(),
                row.place(),
                row.lookAt(),
                row.acceptWhen(),
                row.because(),
                number == null
                        ? null
                        : new NumberAsked(
                                number.quantity(),
                                UnitJson.of(number.unit()),
                                number.min(),
                                number.max(),
                                number.lowest(),
                                number.highest()),
                row.photoRule(),
                row.photoRule().label(),
                row.photoRule().least(),
                row.seenBy().stream().map(Labelled::label).toList(),
                row.signedBy(),
                row.source(),
                all.stream().filter(RowAnswerShown::counts).findFirst().orElse(null),
                all,
                Stops.of(row, answers));
    }

    private static RowAnswerShown shown(GivenAnswer answer, boolean counts) {
        GivenAnswer.Acceptance acceptance = answer.acceptance();
        return new RowAnswerShown(
                answer.id(),
                answer.round(),
                answer.answer(),
                answer.judged(),
                answer.judged().label(),
                counts,
                answer.value(),
                answer.note(),
                answer.at(),
                answer.receivedAt(),
                answer.person(),
                answer.photos(),
                acceptance == null ? null : new RowAccepted(acceptance.reason(), acceptance.person(), acceptance.at()));
    }

    private static String stopSentence(String code, Standing standing) {
        StringBuilder sentence = new StringBuilder("Do not cover: " + name(code) + " cannot be signed. ");
        if (!standing.lapsed().isEmpty()) {
            LapsedApproval first = standing.lapsed().get(0);
            sentence.append("The approval of \"%s\" no longer stands: %s ".formatted(first.title(), first.because()));
        }
        int count = standing.stops().size();
        if (count > 0) {
            RowStop first = standing.stops().get(0);
            sentence.append(first.lookAt())
                    .append(' ')
                    .append(first.place() == null ? "" : first.place() + ": ")
                    .append(first.reason());
            if (count > 1) {
                sentence.append(" And ").append(count - 1).append(" more.");
            }
        }
        return sentence.toString().strip();
    }

    private static String sentence(String code, CheckRow row, GivenAnswer answer) {
        CheckRow.Asked number = row.number();
        String value = number == null || answer.value() == null
                ? ""
                : ", " + number.quantity() + " " + Stops.text(number.unit(), answer.value());
        return name(code) + ", " + at(row) + row.lookAt() + " "
                + answer.judged().label() + value + ".";
    }

    private static String at(CheckRow row) {
        return row.place() == null ? "" : row.place() + ": ";
    }

    private static int number(String code) {
        return Integer.parseInt(code.substring(1));
    }

    private static String name(String code) {
        return "Cover check " + number(code);
    }

    private static String path(String houseId, String code) {
        return "/api/v1/houses/" + houseId + "/cover-checks/" + code;
    }
}
