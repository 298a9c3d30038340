package oakum.portal.people;

import java.sql.Timestamp;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import oakum.portal.http.IdempotentAct;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Adds lines to the trail. */
@Service
class AuditImpl implements Audit {
    private final JdbcClient jdbc;
    private final IdempotentAct request;
    private final Clock clock;

    AuditImpl(JdbcClient jdbc, IdempotentAct request, Clock clock) {
        this.jdbc = jdbc;
        this.request = request;
        this.clock = clock;
    }

    @Override
    @Transactional(propagation = Propagation.MANDATORY)
    public void record(String act, @Nullable String houseId, String what, @Nullable String resource) {
        Authentication authentication = SecurityContextHolder.getContext().getAuthentication();
        if (authentication == null || !(authentication.getPrincipal() instanceof Person person)) {
            throw AccessImpl.signedOut();
        }
        request.done();
        jdbc.sql("""
                        insert into people.audit_line (at, account_id, token_id, act, house_id, sentence, resource)
                        values (:at, :account, :token, :act, :house, :sentence, :resource)
                        """)
                .param("at", Timestamp.from(clock.instant()))
                .param("account", person.id())
                .param("token", person.tokenId())
                .param("act", act)
                .param("house", houseId)
                .param("sentence", what)
                .param("resource", resource)
                .update();
    }

    @Override
    @Transactional(readOnly = true)
    public List<DoneBy> doneBy(String act, String houseId, Instant since) {
        return jdbc.sql("""
                        select a.display_name as person, count(*) as times, max(l.at) as last_at
                        from people.audit_line l join people.account a on a.id = l.account_id
                        where l.act = :act and l.house_id = :house and l.at >= :since
                        group by a.id, a.display_name order by times desc, person
                        """)
                .param("act", act)
                .param("house", houseId)
                .param("since", Timestamp.from(since))
                .query((row, n) -> new DoneBy(
                        row.getString("person"),
                        row.getInt("times"),
                        row.getTimestamp("last_at").toInstant()))
                .list();
    }
}
