package oakum.portal.houserecord;

import jakarta.persistence.LockModeType;
import java.util.List;
import java.util.Optional;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.Lock;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;

/** The houses in the database. */
interface HouseRows extends Repository<House, String> {
    House saveAndFlush(House house);

    boolean existsById(String id);

    Optional<House> findById(String id);

    /** Every change of a house takes its row first, so that changes of one house come one after another. */
    @Lock(LockModeType.PESSIMISTIC_WRITE)
    @Query("select h from House h where h.id = :id")
    Optional<House> lock(String id);

    @Query("select h from House h where h.id > :after order by h.id")
    List<House> after(String after, Limit limit);

    @Query("select h from House h where h.id > :after and h.id in :ids order by h.id")
    List<House> after(String after, java.util.Collection<String> ids, Limit limit);
}
