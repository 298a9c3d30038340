package oakum.portal.people;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import oakum.portal.http.Problem;
import org.springframework.http.HttpStatus;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.core.context.SecurityContextImpl;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.security.web.context.SecurityContextRepository;
import org.springframework.stereotype.Service;

/** Signing in and out with a name and a password. */
@Service
class Sessions {
    private final AccountRows accounts;
    private final PasswordEncoder passwords;
    private final SecurityContextRepository contexts;
    private final SignInLimits limits;
    /** Compared with where there is no account, so that an unknown name takes as long as a wrong password. */
    private final String nobodysHash;

    Sessions(AccountRows accounts, PasswordEncoder passwords, SecurityContextRepository contexts, SignInLimits limits) {
        this.accounts = accounts;
        this.passwords = passwords;
        this.contexts = contexts;
        this.limits = limits;
        this.nobodysHash = Objects.requireNonNull(passwords.encode("nobody signs in with this"));
    }

    void signIn(String account, String password, HttpServletRequest request, HttpServletResponse response) {
        String name = account.strip().toLowerCase(Locale.ROOT);
        limits.check(name, request.getRemoteAddr());
        Account found = accounts.findByAccount(name).filter(Account::active).orElse(null);
        String hash = found == null ? null : found.passwordHash();
        boolean right = passwords.matches(password, hash == null ? nobodysHash : hash);
        if (found == null || hash == null || !right) {
            limits.failed(name, request.getRemoteAddr());
            throw new Problem(HttpStatus.UNAUTHORIZED, "sign-in-refused", "The account or the password is not right.");
        }
        if (request.getSession(false) != null) {
            // an id that was known before must not become a signed-in one
            request.changeSessionId();
        }
        SecurityContext context = new SecurityContextImpl(
                UsernamePasswordAuthenticationToken.authenticated(new Person(found.id(), null), null, List.of()));
        SecurityContextHolder.setContext(context);
        contexts.saveContext(context, request, response);
    }

    void signOut(HttpServletRequest request) {
        HttpSession session = request.getSession(false);
        if (session != null) {
            session.invalidate();
        }
        SecurityContextHolder.clearContext();
    }
}
