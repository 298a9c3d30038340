package oakum.portal.people;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.stereotype.Component;

/** An empty portal lets nobody in; the first principal comes from a setting. */
@Component
class FirstPrincipal implements ApplicationRunner {
    private static final Logger LOG = LoggerFactory.getLogger(FirstPrincipal.class);

    private final AccountRows rows;
    private final Accounts accounts;
    private final String password;
    private final boolean demo;

    FirstPrincipal(
            AccountRows rows,
            Accounts accounts,
            @Value("${oakum.principal-password:}") String password,
            @Value("${oakum.demo:false}") boolean demo) {
        this.rows = rows;
        this.accounts = accounts;
        this.password = password;
        this.demo = demo;
    }

    @Override
    public void run(ApplicationArguments arguments) {
        boolean nobody = rows.findAllByOrderByAccount().stream()
                .noneMatch(account -> !account.id().equals(Person.PORTAL.id()));
        if (!nobody || demo) {
            return;
        }
        if (password.isBlank()) {
            LOG.warn("Nobody can sign in yet: set OAKUM_PRINCIPAL_PASSWORD and start again; it makes the account"
                    + " \"principal\".");
            return;
        }
        try {
            accounts.createIfAbsent("principal", "principal", password, Role.PRINCIPAL, null);
        } catch (DataIntegrityViolationException e) {
            // another portal that started at the same moment on the same database was first
            LOG.info("The account \"principal\" is there already.");
            return;
        }
        LOG.info("The account \"principal\" was made with the password of OAKUM_PRINCIPAL_PASSWORD.");
    }
}
