package oakum.portal.decision;

import java.time.Clock;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Notice;
import oakum.portal.houserecord.HouseRecord;
import oakum.portal.houserecord.Proof;
import oakum.portal.houserecord.Snapshot;
import oakum.portal.houserecord.standing.ProofState;
import oakum.portal.houserecord.standing.Standing;
import oakum.portal.http.EntityTag;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Audit;
import oakum.portal.people.Caller;
import oakum.portal.people.Permission;
import oakum.portal.people.Role;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.databind.json.JsonMapper;

/** Opens, writes and approves decisions. Every change takes the house's lock before it reads what it rests on. */
@Service
class DecisionStore implements Decisions {
    private static final Pattern CODE = Pattern.compile("[A-Z][0-9]{2,3}");
    private static final int LONGEST_REMARK = 4000;

    private final DecisionRows rows;
    private final ApprovalRows approvals;
    private final HouseRecord record;
    private final Access access;
    private final Audit audit;
    private final Clock clock;
    private final JsonMapper json;

    DecisionStore(
            DecisionRows rows,
            ApprovalRows approvals,
            HouseRecord record,
            Access access,
            Audit audit,
            Clock clock,
            JsonMapper json) {
        this.rows = rows;
        this.approvals = approvals;
        this.record = record;
        this.access = access;
        this.audit = audit;
        this.clock = clock;
        this.json = json;
    }

    /** Every decision of a house by code. */
    Map<String, DecisionContent> contents(String houseId) {
        Map<String, DecisionContent> contents = new LinkedHashMap<>();
        rows.ofHouse(houseId).forEach(decision -> contents.put(decision.code(), read(decision)));
        return contents;
    }

    /** The house as it is, with its decisions; to be read in one transaction. */
    Facts facts(String houseId) {
        Snapshot snapshot = record.snapshot(houseId);
        return Facts.of(snapshot, snapshot.values(), record.standing(snapshot), contents(houseId));
    }

    private DecisionContent read(Decision decision) {
        return json.readValue(decision.content(), DecisionContent.class);
    }

    @Override
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public List<DecisionView> list(String houseId) {
        access.require(Permission.VIEW_HOUSE, houseId);
        Facts facts = facts(houseId);
        List<Approval> given = approvals.ofHouse(houseId);
        List<ApprovalRows.Remark> remarks = approvals.remarks(houseId);
        return rows.ofHouse(houseId).stream()
                .map(decision -> view(decision, facts, given, remarks))
                .toList();
    }

    @Override
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public DecisionView find(String houseId, String code) {
        access.require(Permission.VIEW_HOUSE, houseId);
        return view(require(houseId, code), facts(houseId), approvals.ofHouse(houseId), approvals.remarks(houseId));
    }

    @Override
    @Transactional
    public DecisionView open(String houseId, String code, @Nullable DecisionContent content) {
        access.require(Permission.EDIT_DECISION, houseId);
        record.lock(houseId);
        DecisionKind usual = DecisionTable.kind(code).orElse(null);
        if (usual == null && (content == null || !CODE.matcher(code).matches())) {
            throw Problem.unprocessable(
                    "decision-code",
                    "code",
                    "\"" + code
                            + "\" is none of the usual decisions D01 to D48; one of your own needs a capital letter, two"
                            + " or three digits, and its content.");
        }
        if (rows.findById(new Decision.Id(houseId, code)).isPresent()) {
            throw Problem.conflict("decision-exists", "The house has a decision " + code + " already.");
        }
        DecisionContent written =
                content == null ? Objects.requireNonNull(usual).emptyContent() : content;
        check(houseId, written);
        rows.saveAndFlush(new Decision(houseId, code, json.writeValueAsString(written), clock.instant()));
        audit.record("decision-opened", houseId, code + " " + written.title(), resource(houseId, code));
        return find(houseId, code);
    }

    @Override
    @Transactional
    public DecisionView write(String houseId, String code, DecisionContent content) {
        access.require(Permission.EDIT_DECISION, houseId);
        record.lock(houseId);
        return write(houseId, require(houseId, code), content, "decision-changed");
    }

    @Transactional
    DecisionView write(String houseId, String code, DecisionContent content, @Nullable String ifMatch) {
        access.require(Permission.EDIT_DECISION, houseId);
        record.lock(houseId);
        Decision decision = require(houseId, code);
        EntityTag.require(ifMatch, decision.version());
        return write(houseId, decision, content, "decision-changed");
    }

    private DecisionView write(String houseId, Decision decision, DecisionContent content, String act) {
        check(houseId, content);
        decision.write(json.writeValueAsString(content));
        rows.saveAndFlush(decision);
        audit.record(
                act,
                houseId,
                decision.code() + " " + content.title() + ": "
                        + Objects.requireNonNullElse(content.chosenAlternative(), "open")
                        + (content.reason().isEmpty() ? "" : ", because " + content.reason()),
                resource(houseId, decision.code()));
        return find(houseId, decision.code());
    }

    @Transactional
    DecisionView propose(String houseId, String code, Alternative alternative) {
        access.require(Permission.EDIT_DECISION, houseId);
        record.lock(houseId);
        Decision decision = require(houseId, code);
        DecisionContent content = read(decision);
        List<Alternative> all = new ArrayList<>(content.alternatives());
        all.add(alternative);
        return write(houseId, decision, content.with(all), "alternative-added");
    }

    /** Chooses an alternative as part of taking a trial. */
    void choose(String houseId, String code, String alternative, String reason) {
        access.require(Permission.EDIT_DECISION, houseId);
        Decision decision = require(houseId, code);
        write(houseId, decision, read(decision).choosing(alternative, reason), "alternative-chosen");
    }

    @Override
    @Transactional
    public DecisionView order(String houseId, String code, String line, OrderLine.State state, String note) {
        access.require(Permission.HOLD_ORDER, houseId);
        record.lock(houseId);
        return order(houseId, require(houseId, code), line, state, note);
    }

    @Transactional
    DecisionView order(
            String houseId, String code, String line, OrderLine.State state, String note, @Nullable String ifMatch) {
        access.require(Permission.HOLD_ORDER, houseId);
        record.lock(houseId);
        Decision decision = require(houseId, code);
        EntityTag.require(ifMatch, decision.version());
        return order(houseId, decision, line, state, note);
    }

    private DecisionView order(String houseId, Decision decision, String line, OrderLine.State state, String note) {
        DecisionContent content = read(decision);
        if (content.orders().stream().noneMatch(order -> order.id().equals(line))) {
            throw Problem.notFound("order line", line);
        }
        List<OrderLine> lines = content.orders().stream()
                .map(order -> order.id().equals(line) ? new OrderLine(line, order.title(), state, note) : order)
                .toList();
        return write(
                houseId,
                decision,
                content.ordering(lines),
                "order-" + state.name().toLowerCase(Locale.ROOT));
    }

    private void check(String houseId, DecisionContent content) {
        Set<String> ids = new HashSet<>();
        for (Alternative alternative : content.alternatives()) {
            if (!ids.add(alternative.id())) {
                throw Problem.unprocessable(
                        "same-name-twice", "alternatives", "Two alternatives are called \"" + alternative.id() + "\".");
            }
        }
        if (content.chosenAlternative() != null && !ids.contains(content.chosenAlternative())) {
            throw Problem.unprocessable(
                    "unknown-alternative",
                    "chosenAlternative",
                    "There is no alternative \"" + content.chosenAlternative() + "\".");
        }
        Set<String> lines = new HashSet<>();
        for (OrderLine line : content.orders()) {
            if (!lines.add(line.id())) {
                throw Problem.unprocessable(
                        "same-name-twice", "orders", "Two order lines are called \"" + line.id() + "\".");
            }
        }
        if (content.approvers().isEmpty()) {
            throw Problem.unprocessable(
                    "no-approver", "approvers", "A decision needs at least one role that approves it.");
        }
        Snapshot snapshot = record.snapshot(houseId);
        for (String key : content.proofs()) {
            if (!snapshot.proofs().containsKey(key)) {
                throw Problem.unprocessable("unknown-proof", "proofs", "The house has no proof \"" + key + "\".");
            }
        }
        for (String path : content.governedPaths()) {
            if (record.describe(snapshot, path).field() == null) {
                throw Problem.unprocessable(
                        "unknown-path", path, "The record of this house has nothing at \"" + path + "\".");
            }
        }
    }

    @Override
    @Transactional
    public DecisionView say(String houseId, String code, String text) {
        access.require(Permission.COMMENT, houseId);
        require(houseId, code);
        if (text.isBlank() || text.length() > LONGEST_REMARK) {
            throw Problem.unprocessable(
                    "remark-length", "text", "A remark has 1 to " + LONGEST_REMARK + " characters.");
        }
        Caller caller = access.caller();
        approvals.add(
                houseId,
                new ApprovalRows.Remark(UUID.randomUUID(), code, caller.displayName(), clock.instant(), text.strip()),
                caller.personId());
        audit.record("remark-made", houseId, code + ": " + text.strip(), resource(houseId, code));
        return find(houseId, code);
    }

    @Override
    @Transactional
    public DecisionView approve(String houseId, String code, String copyCode, Role role) {
        return approve(houseId, code, copyCode, role, null);
    }

    @Override
    @Transactional
    public DecisionView approve(String houseId, String code, String copyCode, Role role, @Nullable String exception) {
        access.require(Permission.APPROVE, houseId);
        record.lock(houseId);
        Decision decision = require(houseId, code);
        DecisionContent content = read(decision);
        if (!content.approvers().contains(role) || !access.roles(houseId).contains(role)) {
            throw Problem.forbidden("Decision " + code + " is approved by "
                    + String.join(
                            ", ", content.approvers().stream().map(Role::label).toList())
                    + "; you approve only in a role that you hold.");
        }
        Facts facts = facts(houseId);
        Caller caller = access.caller();
        List<Approval> given = approvals.ofHouse(houseId);
        String stands = copyCode(code, content, facts);
        if (!stands.equals(copyCode)) {
            throw Problem.conflict(
                            "not-what-stands",
                            "Not approved: what you were shown (" + copyCode + ") is no longer what stands (" + stands
                                    + "). Read it again.")
                    .with("copyCode", stands);
        }
        requireProven(content, facts);
        List<Failing> failing = Failing.of(content, facts);
        String reason = Failing.exception(
                code,
                content,
                failing,
                Failing.excepted(code, content, facts, given, failing),
                role,
                exception == null ? "" : exception.strip());
        boolean already = given.stream()
                .anyMatch(a -> a.code().equals(code)
                        && a.role() == role
                        && a.personId().equals(caller.personId())
                        && a.copyCode().equals(copyCode)
                        && Objects.equals(a.exceptionReason(), reason)
                        && ApprovalStanding.of(a, content, facts).state() == ApprovalState.STANDS);
        if (!already) {
            approvals.add(
                    houseId,
                    new Approval(
                            UUID.randomUUID(),
                            code,
                            role,
                            caller.personId(),
                            caller.displayName(),
                            clock.instant(),
                            copyCode,
                            approved(code, content, facts),
                            reason,
                            Failing.sentences(failing),
                            null,
                            null,
                            null));
            audit.record(
                    "approval-given",
                    houseId,
                    code + " " + content.title() + " as " + role.label() + ", copy code " + copyCode
                            + (reason == null
                                    ? ""
                                    : ", although " + String.join(" ", Failing.sentences(failing)) + " Exception: "
                                            + reason),
                    resource(houseId, code));
        }
        return find(houseId, code);
    }

    private static void requireProven(DecisionContent content, Facts facts) {
        if (!content.alternatives().isEmpty() && content.chosenAlternative() == null) {
            throw Problem.conflict("nothing-chosen", "Nothing to approve yet: no alternative is chosen.");
        }
        for (String key : content.proofs()) {
            Proof proof = facts.snapshot().proofs().get(key);
            Standing.Of state = facts.states().get(key);
            if (proof == null || state == null || state.state() != ProofState.CURRENT) {
                throw Problem.conflict(
                        "proof-not-current",
                        "Not approved: the proof \""
                                + (proof == null ? key : proof.content().title())
                                + "\" is not current. Recompute it or take a way on first.");
            }
            for (Notice notice : proof.content().notices()) {
                if (notice.weight() == Notice.Weight.REJECTED) {
                    throw Problem.conflict(
                            "proof-rejected",
                            "Not approved: the proof \"" + proof.content().title() + "\" must not be used. "
                                    + notice.sentence());
                }
            }
        }
    }

    private static Approval.Content approved(String code, DecisionContent content, Facts facts) {
        Map<String, Approval.ApprovedProof> proofs = new LinkedHashMap<>();
        for (String key : content.proofs()) {
            Proof proof = Objects.requireNonNull(facts.snapshot().proofs().get(key));
            Proof.Content c = proof.content();
            proofs.put(
                    key,
                    new Approval.ApprovedProof(
                            proof.issue(), c.copyCode(), c.calculationVersion(), c.relied(), c.inputs(), c.outputs()));
        }
        Map<String, Approval.Neighbour> neighbours = new LinkedHashMap<>();
        for (Arrow arrow : DecisionTable.into(code)) {
            neighbours.put(arrow.from(), facts.neighbour(arrow.from()));
        }
        return new Approval.Content(
                content.chosenAlternative(), proofs, facts.under(content.governedPaths()), neighbours);
    }

    /** Stands for what a person is shown of a decision: the question, the choice, and every proof with its numbers. */
    String copyCode(String code, DecisionContent content, Facts facts) {
        StringBuilder shown = new StringBuilder(code)
                .append('\n')
                .append(content.title())
                .append('\n')
                .append(content.question())
                .append('\n')
                .append(content.chosenAlternative())
                .append('\n')
                .append(content.reason())
                .append('\n');
        content.alternatives().stream()
                .filter(alternative -> alternative.id().equals(content.chosenAlternative()))
                .forEach(alternative ->
                        shown.append(json.writeValueAsString(alternative)).append('\n'));
        for (String key : content.proofs()) {
            Proof proof = facts.snapshot().proofs().get(key);
            if (proof != null) {
                shown.append(key)
                        .append(' ')
                        .append(proof.issue())
                        .append(' ')
                        .append(proof.content().copyCode())
                        .append('\n');
            }
        }
        facts.under(content.governedPaths())
                .forEach((path, value) ->
                        shown.append(path).append('=').append(value).append('\n'));
        return Canonical.copyCode(shown.toString());
    }

    @Override
    @Transactional
    public DecisionView withdraw(String houseId, String code, UUID approval, String reason) {
        access.require(Permission.APPROVE, houseId);
        record.lock(houseId);
        if (reason.isBlank()) {
            throw Problem.unprocessable("reason-missing", "reason", "Say why you withdraw it; it stays on the record.");
        }
        Approval found = approvals.ofHouse(houseId).stream()
                .filter(a -> a.id().equals(approval) && a.code().equals(code))
                .findFirst()
                .orElseThrow(() -> Problem.notFound("approval", approval));
        Caller caller = access.caller();
        if (!found.personId().equals(caller.personId())
                && !access.roles(houseId).contains(Role.PRINCIPAL)) {
            throw Problem.forbidden("An approval is withdrawn by whoever gave it, or by the principal.");
        }
        if (found.withdrawnAt() == null) {
            approvals.withdraw(approval, clock.instant(), caller.displayName(), reason.strip());
            audit.record(
                    "approval-withdrawn",
                    houseId,
                    code + ", given as " + found.role().label() + ": " + reason.strip(),
                    resource(houseId, code));
        }
        return find(houseId, code);
    }

    private Decision require(String houseId, String code) {
        return rows.findById(new Decision.Id(houseId, code)).orElseThrow(() -> Problem.notFound("decision", code));
    }

    private static String resource(String houseId, String code) {
        return "/houses/" + houseId + "/decisions/" + code;
    }

    private DecisionView view(Decision decision, Facts facts, List<Approval> given, List<ApprovalRows.Remark> remarks) {
        String code = decision.code();
        DecisionContent c = Objects.requireNonNull(facts.decision(code));
        List<DecisionView.ApprovalView> shown = approvalViews(code, c, facts, given);
        DecisionState state = state(c, shown);
        List<Failing> failing = Failing.of(c, facts);
        return new DecisionView(
                code,
                c.title(),
                c.question(),
                c.group(),
                c.chosenAlternative(),
                c.alternatives(),
                c.reason(),
                c.proofs(),
                c.approvers(),
                c.outsideApprovers(),
                c.safetyList(),
                c.governs(),
                c.orders(),
                DecisionTable.from(code).stream()
                        .map(arrow -> arrowView(arrow, facts))
                        .toList(),
                state,
                shown,
                remarks.stream()
                        .filter(remark -> remark.code().equals(code))
                        .map(remark ->
                                new DecisionView.RemarkView(remark.id(), remark.person(), remark.at(), remark.text()))
                        .toList(),
                c.dueOn(),
                copyCode(code, c, facts),
                failing.stream()
                        .map(f -> new DecisionView.FailingView(f.sentence(), f.needsException()))
                        .toList(),
                decision.version(),
                actions(
                        facts.snapshot().houseId(),
                        c,
                        facts,
                        shown,
                        !Failing.needException(failing) || Failing.excepted(code, c, facts, given, failing) != null));
    }

    private static DecisionView.ArrowView arrowView(Arrow arrow, Facts facts) {
        DecisionContent target = facts.decision(arrow.to());
        String title = target != null
                ? target.title()
                : DecisionTable.kind(arrow.to()).map(DecisionKind::title).orElse(arrow.to());
        return new DecisionView.ArrowView(
                arrow.to(), title, arrow.hard(), arrow.because(), arrow.trigger(), target != null);
    }

    static List<DecisionView.ApprovalView> approvalViews(
            String code, DecisionContent content, Facts facts, List<Approval> given) {
        Set<UUID> latest = new HashSet<>();
        latest(code, given).forEach(approval -> latest.add(approval.id()));
        boolean bought = content.orders().stream().anyMatch(order -> order.state() == OrderLine.State.BOUGHT);
        boolean built = content.orders().stream().anyMatch(order -> order.state() == OrderLine.State.BUILT);
        return given.stream()
                .filter(approval -> approval.code().equals(code))
                .map(approval -> {
                    ApprovalStanding standing = ApprovalStanding.of(approval, content, facts);
                    return new DecisionView.ApprovalView(
                            approval.id(),
                            approval.role(),
                            approval.person(),
                            approval.at(),
                            standing.state(),
                            approval.copyCode(),
                            standing.reasons().stream()
                                    .map(ApprovalStanding.Reason::sentence)
                                    .distinct()
                                    .toList(),
                            approval.exceptionReason(),
                            approval.failing(),
                            bought,
                            built,
                            approval.withdrawnAt() == null && !latest.contains(approval.id()),
                            approval.withdrawnAt(),
                            approval.withdrawnBy(),
                            approval.withdrawnReason());
                })
                .toList();
    }

    /** The latest approval of each role that nobody withdrew. */
    static List<Approval> latest(String code, List<Approval> given) {
        Map<Role, Approval> latest = new LinkedHashMap<>();
        given.stream()
                .filter(approval -> approval.code().equals(code) && approval.withdrawnAt() == null)
                .forEach(approval -> latest.put(approval.role(), approval));
        return List.copyOf(latest.values());
    }

    private static DecisionState state(DecisionContent content, List<DecisionView.ApprovalView> shown) {
        Set<Role> standing = new HashSet<>();
        ApprovalState worst = ApprovalState.STANDS;
        for (DecisionView.ApprovalView approval : shown) {
            if (!approval.replaced() && approval.state() != ApprovalState.WITHDRAWN) {
                standing.add(approval.role());
                worst = approval.state().compareTo(worst) > 0 ? approval.state() : worst;
            }
        }
        if (worst == ApprovalState.LAPSED) {
            return DecisionState.LAPSED;
        }
        if (worst == ApprovalState.FRESH_LOOK) {
            return DecisionState.FRESH_LOOK;
        }
        if (standing.isEmpty()) {
            return DecisionState.OPEN;
        }
        return standing.containsAll(content.approvers()) ? DecisionState.APPROVED : DecisionState.PARTLY_APPROVED;
    }

    private List<String> actions(
            String houseId,
            DecisionContent content,
            Facts facts,
            List<DecisionView.ApprovalView> shown,
            boolean plainly) {
        List<String> actions = new ArrayList<>();
        Set<Role> roles = access.roles(houseId);
        boolean current = content.proofs().stream()
                .map(key -> facts.states().get(key))
                .allMatch(state -> state != null && state.state() == ProofState.CURRENT);
        boolean chosen = content.alternatives().isEmpty() || content.chosenAlternative() != null;
        Set<Role> done = new HashSet<>();
        shown.stream()
                .filter(a -> a.state() == ApprovalState.STANDS && !a.replaced())
                .forEach(a -> done.add(a.role()));
        boolean mine = content.approvers().stream().anyMatch(role -> roles.contains(role) && !done.contains(role));
        if (current && chosen && mine && access.may(Permission.APPROVE, houseId)) {
            if (plainly) {
                actions.add("approve");
            } else if (!content.safetyList() || roles.contains(Role.PRINCIPAL)) {
                actions.add("approve-with-exception");
            }
        }
        if (!done.isEmpty() && access.may(Permission.APPROVE, houseId)) {
            actions.add("withdraw");
        }
        if (access.may(Permission.EDIT_DECISION, houseId)) {
            actions.add("change-decision");
            actions.add("add-alternative");
        }
        if (access.may(Permission.COMMENT, houseId)) {
            actions.add("comment");
        }
        if (!content.orders().isEmpty() && access.may(Permission.HOLD_ORDER, houseId)) {
            actions.add("change-order");
        }
        return actions;
    }
}
