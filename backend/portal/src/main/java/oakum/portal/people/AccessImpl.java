package oakum.portal.people;

import java.time.Clock;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import oakum.portal.http.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.context.request.RequestAttributes;
import org.springframework.web.context.request.RequestContextHolder;

/** Reads accounts and tokens once for each request; what is withdrawn is gone at the next request. */
@Service
class AccessImpl implements Access {
    private static final String REMEMBERED = AccessImpl.class.getName();

    private final AccountRows accounts;
    private final TokenRows tokens;
    private final Clock clock;
    private final FirmDay firmDay;

    AccessImpl(AccountRows accounts, TokenRows tokens, Clock clock, FirmDay firmDay) {
        this.accounts = accounts;
        this.tokens = tokens;
        this.clock = clock;
        this.firmDay = firmDay;
    }

    /** What is known of the one who makes this request; {@code token} is null for a person. */
    private record Known(
            Person person,
            Account account,
            Set<HeldRole> roles,
            @Nullable Token token) {
        boolean portal() {
            return person.equals(Person.PORTAL);
        }

        boolean tokenCovers(String houseId) {
            return token == null || token.houses().isEmpty() || token.houses().contains(houseId);
        }

        boolean tokenCovers(Permission permission) {
            return token == null || token.permissions().contains(permission);
        }

        boolean tokenCoversFirm() {
            return token == null || token.houses().isEmpty();
        }
    }

    @Override
    @Transactional(readOnly = true)
    public Caller caller() {
        Known known = known();
        return new Caller(
                known.account().id(),
                known.account().account(),
                known.account().displayName(),
                known.person().tokenId() != null);
    }

    @Override
    @Transactional(readOnly = true)
    public Set<Role> roles(String houseId) {
        Known known = known();
        if (known.portal()) {
            return EnumSet.of(Role.PRINCIPAL);
        }
        Set<Role> held = EnumSet.noneOf(Role.class);
        if (known.tokenCovers(houseId)) {
            for (HeldRole role : known.roles()) {
                if (role.houseId() == null || role.houseId().equals(houseId)) {
                    held.add(role.role());
                }
            }
        }
        return held;
    }

    @Override
    @Transactional(readOnly = true)
    public Set<Role> firmRoles() {
        Known known = known();
        if (known.portal()) {
            return EnumSet.of(Role.PRINCIPAL);
        }
        Set<Role> held = EnumSet.noneOf(Role.class);
        if (known.tokenCoversFirm()) {
            for (HeldRole role : known.roles()) {
                if (role.houseId() == null) {
                    held.add(role.role());
                }
            }
        }
        return held;
    }

    @Override
    @Transactional(readOnly = true)
    public boolean may(Permission permission, String houseId) {
        return known().tokenCovers(permission) && permission.heldBy(roles(houseId));
    }

    @Override
    @Transactional(readOnly = true)
    public void require(Permission permission, String houseId) {
        if (!may(Permission.VIEW_HOUSE, houseId)) {
            throw Problem.notFound("house", houseId);
        }
        if (!may(permission, houseId)) {
            throw Problem.forbidden(refusal(permission) + " in house " + houseId + ".");
        }
    }

    @Override
    @Transactional(readOnly = true)
    public void require(Permission permission) {
        if (!known().tokenCovers(permission) || !permission.heldBy(firmRoles())) {
            throw Problem.forbidden(refusal(permission) + ".");
        }
    }

    @Override
    @Transactional(readOnly = true)
    public boolean mayAnywhere(Permission permission) {
        return known().tokenCovers(permission)
                && (permission.heldBy(firmRoles())
                        || sharedHouses().stream().anyMatch(house -> permission.heldBy(roles(house))));
    }

    @Override
    @Transactional(readOnly = true)
    public void requireAnywhere(Permission permission) {
        if (!mayAnywhere(permission)) {
            throw Problem.forbidden(refusal(permission) + ".");
        }
    }

    private String refusal(Permission permission) {
        String what = permission.name().toLowerCase(Locale.ROOT).replace('_', '-');
        Known known = known();
        return known.tokenCovers(permission)
                ? "Your role does not include the permission " + what
                : "This token does not include the permission " + what;
    }

    @Override
    @Transactional(readOnly = true)
    public boolean seesAllHouses() {
        return known().tokenCovers(Permission.VIEW_HOUSE) && Permission.VIEW_HOUSE.heldBy(firmRoles());
    }

    @Override
    @Transactional(readOnly = true)
    public Set<String> sharedHouses() {
        Known known = known();
        Set<String> shared = new HashSet<>();
        if (!known.tokenCovers(Permission.VIEW_HOUSE)) {
            return shared;
        }
        boolean firm = false;
        for (HeldRole role : known.roles()) {
            String house = role.houseId();
            if (house == null) {
                firm = true;
            } else if (known.tokenCovers(house)) {
                shared.add(house);
            }
        }
        if (firm && known.token() != null) {
            // the person sees every house, the token only these
            shared.addAll(known.token().houses());
        }
        return shared;
    }

    private Known known() {
        Authentication authentication = SecurityContextHolder.getContext().getAuthentication();
        if (authentication == null || !(authentication.getPrincipal() instanceof Person person)) {
            throw signedOut();
        }
        RequestAttributes request = RequestContextHolder.getRequestAttributes();
        if (request != null
                && request.getAttribute(REMEMBERED, RequestAttributes.SCOPE_REQUEST) instanceof Known remembered
                && remembered.person().equals(person)) {
            return remembered;
        }
        Known known = read(person);
        if (request != null) {
            request.setAttribute(REMEMBERED, known, RequestAttributes.SCOPE_REQUEST);
        }
        return known;
    }

    /** To be called where roles are given or taken within a request. */
    static void forget() {
        RequestAttributes request = RequestContextHolder.getRequestAttributes();
        if (request != null) {
            request.removeAttribute(REMEMBERED, RequestAttributes.SCOPE_REQUEST);
        }
    }

    private Known read(Person person) {
        Account account = accounts.findById(person.id()).filter(Account::active).orElseThrow(AccessImpl::signedOut);
        UUID tokenId = person.tokenId();
        Token token = tokenId == null
                ? null
                : tokens.findById(tokenId).filter(t -> t.good(clock.instant())).orElseThrow(AccessImpl::signedOut);
        return new Known(person, account, account.rolesOn(firmDay.today()), token);
    }

    static Problem signedOut() {
        return new Problem(HttpStatus.UNAUTHORIZED, "signed-out", "Sign in first: nobody is signed in.");
    }
}
