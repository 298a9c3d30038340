package oakum.portal.people;

import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;

/** Lets tests of other modules be somebody; what they call is what a signed-in person calls. */
public final class SignInForTests {
    private SignInForTests() {}

    public static Authentication authentication(UUID accountId) {
        return UsernamePasswordAuthenticationToken.authenticated(new Person(accountId, null), null, List.of());
    }

    public static <T> T as(UUID accountId, Supplier<T> work) {
        return AsPortal.as(new Person(accountId, null), work);
    }
}
