package oakum.portal.people;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import oakum.portal.http.Page;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/** Signing in, signing out, and who one is. */
@RestController
@RequestMapping("/api/v1")
class PeopleController {
    private final Sessions sessions;
    private final People people;

    private final Tokens tokens;
    private final Shares shares;
    private final Trail trail;

    PeopleController(Sessions sessions, People people, Tokens tokens, Shares shares, Trail trail) {
        this.sessions = sessions;
        this.people = people;
        this.tokens = tokens;
        this.shares = shares;
        this.trail = trail;
    }

    /** A name and a password. */
    record SignIn(String account, String password) {}

    /** The units in which somebody wants to read. */
    record UnitsChoice(Units units) {}

    @PostMapping("/session")
    Me signIn(@RequestBody SignIn signIn, HttpServletRequest request, HttpServletResponse response) {
        sessions.signIn(signIn.account(), signIn.password(), request, response);
        return people.me();
    }

    @DeleteMapping("/session")
    @ResponseStatus(HttpStatus.NO_CONTENT)
    void signOut(HttpServletRequest request) {
        sessions.signOut(request);
    }

    @GetMapping("/me")
    Me me() {
        return people.me();
    }

    @PutMapping("/me/units")
    Me chooseUnits(@RequestBody UnitsChoice choice) {
        return people.chooseUnits(choice.units());
    }

    /** The password that one has and the one that one wants. */
    record PasswordChange(String oldPassword, String newPassword) {
        /** Never prints them. */
        @Override
        public String toString() {
            return "PasswordChange";
        }
    }

    @PutMapping("/me/password")
    @ResponseStatus(HttpStatus.NO_CONTENT)
    void changePassword(@RequestBody PasswordChange change, HttpServletRequest request) {
        HttpSession session = request.getSession(false);
        people.changePassword(
                change.oldPassword(),
                change.newPassword(),
                request.getRemoteAddr(),
                session == null ? null : session.getId());
    }

    /**
     * A role to be given for a house.
     *
     * @param endsOn the last day on which it is held, or null
     */
    record NewShare(String account, Role role, @Nullable LocalDate endsOn) {}

    /** Why an account is closed. */
    record AccountClosing(@NotBlank @Size(max = 500) String reason) {}

    @PostMapping("/people/{id}/closing")
    PersonView closeAccount(@PathVariable UUID id, @Valid @RequestBody AccountClosing closing) {
        return people.close(id, closing.reason());
    }

    @GetMapping("/people")
    List<PersonView> listPeople() {
        return people.all();
    }

    @PostMapping("/people")
    @ResponseStatus(HttpStatus.CREATED)
    PersonView addPerson(@RequestBody NewPerson person) {
        return people.add(person);
    }

    @GetMapping("/tokens")
    List<TokenView> listTokens() {
        return tokens.mine();
    }

    @PostMapping("/tokens")
    @ResponseStatus(HttpStatus.CREATED)
    MadeToken makeToken(@RequestBody NewToken token) {
        return tokens.make(token);
    }

    @DeleteMapping("/tokens/{id}")
    @ResponseStatus(HttpStatus.NO_CONTENT)
    void revokeToken(@PathVariable UUID id) {
        tokens.revoke(id);
    }

    @GetMapping("/houses/{house}/shares")
    List<Shares.Share> listShares(@PathVariable String house) {
        return shares.of(house);
    }

    @PostMapping("/houses/{house}/shares")
    @ResponseStatus(HttpStatus.CREATED)
    Shares.Share shareHouse(@PathVariable String house, @RequestBody NewShare share) {
        return shares.give(house, share.account(), share.role(), share.endsOn());
    }

    @DeleteMapping("/houses/{house}/shares/{personId}")
    @ResponseStatus(HttpStatus.NO_CONTENT)
    void withdrawShare(@PathVariable String house, @PathVariable UUID personId) {
        shares.takeBack(house, personId);
    }

    @GetMapping("/audit")
    Page<Trail.Line> readAudit(
            @RequestParam(required = false) @Nullable String house,
            @RequestParam(required = false) @Nullable String cursor) {
        return trail.backwards(house, cursor);
    }

    /** Everything that changed in the houses that the caller may see; ask again with the cursor that it gave. */
    @GetMapping("/changes")
    Trail.Changes readChanges(@RequestParam(required = false) @Nullable String since) {
        return trail.since(since);
    }
}
