package oakum.portal.people;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;

/** The accounts in the database. */
interface AccountRows extends Repository<Account, UUID> {
    Account save(Account account);

    Account saveAndFlush(Account account);

    Optional<Account> findById(UUID id);

    Optional<Account> findByAccount(String account);

    List<Account> findAllByOrderByAccount();

    @Query("select distinct a from Account a join a.roles r where r.houseId = :houseId order by a.account")
    List<Account> findByHouse(String houseId);
}
