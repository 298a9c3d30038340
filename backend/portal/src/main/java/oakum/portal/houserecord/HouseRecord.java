package oakum.portal.houserecord;

import java.util.List;
import java.util.Map;
import java.util.Set;
import oakum.portal.houserecord.standing.Standing;

/** The record of one house for other modules. Every method asks who is calling. */
public interface HouseRecord {
    /**
     * Takes the house's row until the transaction ends, so that nothing of the house changes meanwhile. To be called
     * before anything is read that a change will rest on.
     */
    void lock(String houseId);

    /** Everything of a house from one read. */
    Snapshot snapshot(String houseId);

    /** Every value of the record by path, without results. */
    Map<String, String> valuesOf(String houseId);

    /** The parts as they are now. */
    Parts parts(String houseId);

    /**
     * Saves a part as its next revision, without asking which one it was made from; for loading and for other modules
     * that hold the lock.
     *
     * @return the new revision
     * @throws oakum.physics.calculation.Refused where a value breaks a limit
     */
    int save(String houseId, PartKind kind, Record part, String reason);

    /** How the proofs of a snapshot stand. */
    Standing standing(Snapshot snapshot);

    /**
     * The record as it would be with other values; saves nothing.
     *
     * @throws oakum.portal.http.Problem 422 {@code unknown-path}, 400 where a value has another type than its field
     * @throws oakum.physics.calculation.Refused where a value breaks a limit
     */
    Tried tried(Snapshot snapshot, List<ValueChange> changes);

    /**
     * Saves tried values as new revisions and the results that differ as new issues of their proofs. The caller of this
     * method holds the lock.
     */
    void keep(String houseId, Tried tried, Map<String, Standing.Result> results, String reason);

    /** What a path means: label, unit, limits. Never null: an unknown path is its own label. */
    PathInfo describe(Snapshot snapshot, String path);

    /** Who gave some paths their present values, when and why; paths that no saved part holds are left out. */
    Map<String, ValueOrigin> originsOf(String houseId, Set<String> paths);

    /** Every revision and issue of the house, the latest first. */
    List<RecordChange> history(String houseId);
}
