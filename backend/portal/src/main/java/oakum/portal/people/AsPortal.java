package oakum.portal.people;

import java.util.List;
import java.util.function.Supplier;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.core.context.SecurityContextImpl;

/** Runs work that no person asked for, such as a job or the loading of the demo, as the portal itself: all rights. */
public final class AsPortal {
    private AsPortal() {}

    /** Runs on this thread; whoever was signed in before is so again afterwards. */
    public static void run(Runnable work) {
        call(() -> {
            work.run();
            return true;
        });
    }

    /** The same for work that answers. */
    public static <T> T call(Supplier<T> work) {
        return as(Person.PORTAL, work);
    }

    static <T> T as(Person person, Supplier<T> work) {
        SecurityContext before = SecurityContextHolder.getContext();
        SecurityContextHolder.setContext(
                new SecurityContextImpl(UsernamePasswordAuthenticationToken.authenticated(person, null, List.of())));
        try {
            return work.get();
        } finally {
            SecurityContextHolder.setContext(before);
        }
    }
}
