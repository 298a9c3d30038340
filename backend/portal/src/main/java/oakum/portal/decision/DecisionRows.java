package oakum.portal.decision;

import java.util.List;
import java.util.Optional;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;

/** The decisions in the database. */
interface DecisionRows extends Repository<Decision, Decision.Id> {
    Decision saveAndFlush(Decision decision);

    Optional<Decision> findById(Decision.Id id);

    @Query("select d from Decision d where d.id.houseId = :houseId order by d.id.code")
    List<Decision> ofHouse(String houseId);
}
