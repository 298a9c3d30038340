package oakum.portal.houserecord;

import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.List;
import java.util.Objects;
import oakum.portal.houserecord.standing.Binding;
import oakum.portal.houserecord.standing.ProofState;
import oakum.portal.people.Access;
import oakum.portal.people.Permission;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/** Proofs over HTTP. */
@RestController
@RequestMapping("/api/v1/houses/{house}")
@Tag(name = "Proofs")
class ProofController {
    private final ProofStore proofs;
    private final Access access;

    ProofController(ProofStore proofs, Access access) {
        this.proofs = proofs;
        this.access = access;
    }

    /**
     * A proof to be kept.
     *
     * @param calculation id of the calculation; for computed proofs
     * @param submission the evidence; for submitted ones
     */
    record ProofDraft(
            Proof.Kind kind,
            String key,
            String title,
            @Nullable String calculation,
            List<BindingDraft> bindings,
            @Nullable SubmissionDraft submission,
            String reason) {}

    /** Evidence that somebody submits. */
    record SubmissionDraft(
            String method, @Nullable String inputsHash, String text, List<Proof.SubmittedResult> results) {}

    /** Why something is recomputed. */
    record Recomputation(String reason) {}

    /** A proof with the issues before it, the latest first. */
    record ProofHistory(ProofView proof, List<ProofView> issues) {}

    /** How the proofs of a house stand. */
    record HouseStanding(String houseId, boolean allCurrent, List<ProofStanding> proofs) {}

    /** How one proof stands. */
    record ProofStanding(
            String key,
            String title,
            int issue,
            @Nullable ProofState state,
            List<ValueDifference> differences,
            @Nullable String newVersion,
            List<String> waitingFor) {
        static ProofStanding of(ProofView p) {
            return new ProofStanding(
                    p.key(), p.title(), p.issue(), p.state(), p.differences(), p.newVersion(), p.waitingFor());
        }
    }

    @GetMapping("/proofs")
    List<ProofView> listProofs(@PathVariable String house) {
        return proofs.list(house);
    }

    @PostMapping("/proofs")
    ResponseEntity<ProofView> keepProof(@PathVariable String house, @RequestBody ProofDraft draft) {
        // before anything is said of the draft, or a stranger would learn that the house is there
        access.require(Permission.EDIT_PROOF, house);
        List<Binding> bindings =
                draft.bindings().stream().map(BindingDraft::binding).toList();
        ProofView kept;
        if (draft.kind() == Proof.Kind.COMPUTED) {
            if (draft.calculation() == null) {
                throw StrictReader.malformed("calculation", "is missing");
            }
            kept = proofs.make(house, draft.key(), draft.title(), draft.calculation(), bindings, draft.reason());
        } else {
            SubmissionDraft submitted = draft.submission();
            if (submitted == null) {
                throw StrictReader.malformed("submission", "is missing");
            }
            Proof.Submission submission = new Proof.Submission(
                    submitted.method(),
                    Objects.requireNonNullElse(submitted.inputsHash(), ""),
                    submitted.text(),
                    access.caller().displayName(),
                    submitted.results());
            kept = proofs.submit(house, draft.key(), draft.title(), bindings, submission, draft.reason());
        }
        return ResponseEntity.status(HttpStatus.CREATED).body(kept);
    }

    @GetMapping("/proofs/{key}")
    ProofHistory getProof(@PathVariable String house, @PathVariable String key) {
        return new ProofHistory(proofs.find(house, key), proofs.issues(house, key));
    }

    @PostMapping("/proofs/{key}/recomputations")
    ResponseEntity<ProofView> recomputeProof(
            @PathVariable String house, @PathVariable String key, @RequestBody Recomputation recomputation) {
        return ResponseEntity.status(HttpStatus.CREATED).body(proofs.recompute(house, key, recomputation.reason()));
    }

    @GetMapping("/standing")
    HouseStanding getStanding(@PathVariable String house) {
        List<ProofStanding> standing =
                proofs.list(house).stream().map(ProofStanding::of).toList();
        return new HouseStanding(house, standing.stream().allMatch(p -> p.state() == ProofState.CURRENT), standing);
    }
}
