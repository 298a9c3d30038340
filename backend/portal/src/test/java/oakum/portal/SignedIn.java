package oakum.portal;

import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.authentication;

import jakarta.servlet.http.Cookie;
import java.util.Arrays;
import java.util.Locale;
import java.util.UUID;
import java.util.function.Supplier;
import oakum.portal.people.Accounts;
import oakum.portal.people.Role;
import oakum.portal.people.SignInForTests;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.test.web.servlet.request.RequestPostProcessor;
import org.springframework.web.context.support.WebApplicationContextUtils;

/**
 * Signs somebody in for a test: {@code http.perform(get(…).with(SignedIn.as(Role.DESIGNER)))}. Without houses the role is
 * held for the firm; with houses, for these only. The same role with the same houses is the same account.
 */
public final class SignedIn {
    private SignedIn() {}

    /** A request of somebody who holds this role; with the token against forged requests. */
    public static RequestPostProcessor as(Role role, String... houseIds) {
        return request -> {
            Accounts accounts = WebApplicationContextUtils.getRequiredWebApplicationContext(request.getServletContext())
                    .getBean(Accounts.class);
            UUID id = account(accounts, role, houseIds);
            return unforged(authentication(SignInForTests.authentication(id)).postProcessRequest(request));
        };
    }

    /** A request of nobody, but with the token against forged requests: what is refused is refused for lack of a person. */
    public static RequestPostProcessor nobody() {
        return SignedIn::unforged;
    }

    /** What the client does: it sends the value of the cookie in a header, too. */
    private static MockHttpServletRequest unforged(MockHttpServletRequest request) {
        Cookie token = new Cookie("XSRF-TOKEN", "00000000-0000-0000-0000-000000000001");
        Cookie[] before = request.getCookies() == null ? new Cookie[0] : request.getCookies();
        Cookie[] cookies = Arrays.copyOf(before, before.length + 1);
        cookies[before.length] = token;
        request.setCookies(cookies);
        request.addHeader("X-XSRF-TOKEN", token.getValue());
        return request;
    }

    /** Calls a service as somebody who holds this role. */
    public static <T> T call(Accounts accounts, Role role, Supplier<T> work, String... houseIds) {
        return SignInForTests.as(account(accounts, role, houseIds), work);
    }

    private static UUID account(Accounts accounts, Role role, String... houseIds) {
        String name = ("test-" + role.name() + "-" + String.join("-", houseIds))
                .toLowerCase(Locale.ROOT)
                .replace('_', '-');
        UUID id = null;
        for (String house : houseIds.length == 0 ? new String[] {null} : houseIds) {
            id = accounts.createIfAbsent(name, role.label(), "a test password", role, house);
        }
        return id;
    }
}
