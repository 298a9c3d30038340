package oakum.portal.people;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.repository.Repository;

/** The tokens in the database. */
interface TokenRows extends Repository<Token, UUID> {
    Token save(Token token);

    Optional<Token> findById(UUID id);

    Optional<Token> findBySecretHash(byte[] secretHash);

    List<Token> findByAccountIdOrderByCreatedAtDesc(UUID accountId);
}
