package oakum.portal.view;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import oakum.portal.houserecord.HouseRecord;
import oakum.portal.houserecord.HouseView;
import oakum.portal.houserecord.PartKind;
import oakum.portal.houserecord.Proof;
import oakum.portal.houserecord.Proofs;
import oakum.portal.houserecord.RecordChange;
import oakum.portal.houserecord.standing.ProofState;
import oakum.portal.people.Access;
import oakum.portal.people.Accounts;
import oakum.portal.people.HeldToken;
import oakum.portal.people.Permission;
import oakum.portal.people.Role;
import oakum.portal.view.StartPage.StartMatter;
import org.springframework.stereotype.Component;

/** The consultant: which houses are shared, which inputs hold, what is asked, what changed, where to post. */
@Component
class ConsultantStart implements Start {
    private static final int LATELY_DAYS = 14;

    private final HouseRecord record;
    private final Proofs proofs;
    private final ApprovalMatters approvals;
    private final ChangeMatters changes;
    private final Access access;
    private final Accounts accounts;

    ConsultantStart(
            HouseRecord record,
            Proofs proofs,
            ApprovalMatters approvals,
            ChangeMatters changes,
            Access access,
            Accounts accounts) {
        this.record = record;
        this.proofs = proofs;
        this.approvals = approvals;
        this.changes = changes;
        this.access = access;
        this.accounts = accounts;
    }

    @Override
    public Role role() {
        return Role.CONSULTANT;
    }

    @Override
    public StartPage compose(Sight sight) {
        List<StartMatter> asked = new ArrayList<>(approvals.asked(sight));
        asked.addAll(outdated(sight));
        List<HeldToken> tokens = accounts.tokens(access.caller().personId());
        Instant pulled = tokens.stream()
                .map(HeldToken::lastUsedAt)
                .filter(Objects::nonNull)
                .max(Comparator.naturalOrder())
                .orElse(Instant.EPOCH);
        List<StartMatter> changed =
                changes.since(sight, LATELY_DAYS, change -> change.when().isAfter(pulled));
        return new StartPage(
                role().name(),
                Words.day(sight.today(), sight.today()) + " · all numbers of the interface are SI",
                finding(sight, asked.size(), changed.size()),
                "",
                sight.names(),
                List.of(
                        Section.of(
                                "Houses shared with you",
                                "a share lasts until the principal ends it; a token ends on its own day",
                                sight.all(house -> Stream.of(shared(sight, house, tokens))),
                                "No house is shared with you."),
                        Section.of(
                                "Inputs",
                                "the parts as they hold now; the name of a number ends in its unit",
                                sight.all(house -> inputs(sight, house).stream()),
                                "Nobody has written a part yet."),
                        Section.of("What is asked of you", "first due first", asked, "Nothing is asked of you."),
                        Section.of(
                                "What changed",
                                pulled.equals(Instant.EPOCH)
                                        ? "in the last fourteen days; GET /api/v1/changes tells everything"
                                        : "since a token of yours last asked, at most fourteen days back",
                                changed,
                                "Nothing was changed since."),
                        Section.of(
                                "Where to post a result",
                                "",
                                sight.all(house -> Stream.of(post(house))),
                                "No house is shared with you.")));
    }

    private StartMatter shared(Sight sight, HouseView house, List<HeldToken> tokens) {
        List<String> ends = tokens.stream()
                .filter(token -> token.houses().isEmpty() || token.houses().contains(house.id()))
                .map(token ->
                        "Token “" + token.label() + "” speaks for you until " + sight.day(house, token.expiresAt()))
                .toList();
        boolean mayPost = access.may(Permission.EDIT_PROOF, house.id());
        return new StartMatter(
                "stands",
                mayPost ? "Read and prove" : "Read only",
                house.id(),
                house.name(),
                "/houses/" + house.id(),
                Words.sentence(house.place() + ", " + house.stage().label()),
                List.of(),
                ends.isEmpty() ? "No token speaks for you here yet." : Words.say(ends.toArray(String[]::new)));
    }

    private List<StartMatter> inputs(Sight sight, HouseView house) {
        Map<PartKind, RecordChange> latest = new EnumMap<>(PartKind.class);
        record.history(house.id()).stream()
                .filter(change -> change.kind() == RecordChange.Kind.PART)
                .forEach(change -> PartKind.find(change.key()).ifPresent(kind -> latest.putIfAbsent(kind, change)));
        return latest.values().stream()
                .map(change -> new StartMatter(
                        "note",
                        "Revision " + change.number(),
                        house.id(),
                        change.title(),
                        "/houses/" + house.id() + "/record/" + change.key(),
                        Words.sentence(change.who() + ", " + sight.day(house, change.when())
                                + (change.why().isBlank() ? "" : ": " + change.why())),
                        List.of(),
                        ""))
                .toList();
    }

    /** Evidence that was submitted and rests on another value now: nobody else can compute it anew. */
    private List<StartMatter> outdated(Sight sight) {
        return sight.all(house -> proofs.list(house.id()).stream()
                .filter(proof -> proof.kind() == Proof.Kind.SUBMITTED && proof.state() != ProofState.CURRENT)
                .map(proof -> new StartMatter(
                        "changed",
                        "Submit again",
                        house.id(),
                        proof.title(),
                        "/houses/" + house.id() + "/proofs/" + proof.key(),
                        proof.differences().stream()
                                .limit(2)
                                .map(d -> Words.sentence(
                                        d.label() + " " + sight.shown().became(d.old(), d.present(), d.unit())))
                                .reduce((a, b) -> a + " " + b)
                                .orElse("Something above it is another value now."),
                        List.of(),
                        "")));
    }

    private StartMatter post(HouseView house) {
        boolean mayPost = access.may(Permission.EDIT_PROOF, house.id());
        return new StartMatter(
                mayPost ? "open" : "hold",
                mayPost ? "Open" : "Closed to you",
                house.id(),
                "Proofs of " + house.name(),
                "/houses/" + house.id() + "/proofs",
                mayPost
                        ? "Method, hash of the inputs, the values you saw, your results and your role as signature go to POST"
                                + " /api/v1/houses/" + house.id() + "/proofs."
                        : "This sign-in may read, and not post.",
                List.of(),
                mayPost ? "Refused where a value you saw is another one by now." : "");
    }

    private static String finding(Sight sight, int asked, int changed) {
        return Words.say(
                Words.count(sight.houses().size(), "house is", "houses are") + " shared with you",
                asked == 0 ? "Nothing is asked of you" : Words.count(asked, "thing is", "things are") + " asked of you",
                changed == 0 ? "" : Words.count(changed, "change", "changes") + " since you last looked");
    }
}
