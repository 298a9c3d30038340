package oakum.portal.houserecord;

import oakum.portal.houserecord.standing.Standing;

/** Makes and recomputes proofs. */
final class ProofStore {
    private ProofStore() {}

    /** The next issue of a proof with a new result. */
    static Proof.Content content(Proof.Content before, Standing.Result result) {
        return new Proof.Content(
                before.kind(),
                before.title(),
                before.calculation(),
                result.version(),
                before.bindings(),
                result.relied(),
                result.inputs(),
                result.outputs(),
                result.notices(),
                before.submission(),
                result.copyCode());
    }
}
