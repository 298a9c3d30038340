package oakum.portal.houserecord;

import java.util.List;
import oakum.portal.houserecord.standing.Binding;

/** Proofs of a house, for other modules. Every method asks who is calling. */
public interface Proofs {
    /** The latest issue of each proof, with how it stands. */
    List<ProofView> list(String houseId);

    /**
     * Computes a proof from the record and keeps it as the first or next issue.
     *
     * @param key its name in paths: a small letter, then letters and digits
     * @param calculation id of a calculation
     * @throws oakum.portal.http.Problem 422 for an unknown calculation, input or path, or a proof that would rest on
     *     itself
     * @throws oakum.physics.calculation.Refused where a value breaks a limit
     */
    ProofView make(String houseId, String key, String title, String calculation, List<Binding> bindings, String reason);

    /**
     * Keeps evidence that somebody submits instead of a calculation of ours.
     *
     * @param seen the values it rests on: each with its path and the value that was seen there
     * @throws oakum.portal.http.Problem 409 {@code not-what-stands} where one of these is another value now
     */
    ProofView submit(
            String houseId, String key, String title, List<Binding> seen, Proof.Submission submission, String reason);

    /**
     * Computes a proof and whatever it rests on anew, and keeps what came out as the next issues.
     *
     * @throws oakum.portal.http.Problem 409 where it is current, or cannot be recomputed
     */
    ProofView recompute(String houseId, String key, String reason);

    /**
     * Draws the inputs of a calculation from the record as a proof would, and keeps nothing.
     *
     * @throws oakum.portal.http.Problem 404 without the house, 422 for an unknown calculation, input or path
     */
    Drawn draw(String houseId, String calculation, List<Binding> bindings);

    /** For each result, what of the values that it relied on is another value now; all from one read. */
    List<List<ValueDifference>> differences(String houseId, List<Bound> results);
}
