package oakum.portal.people;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/** Signing in, signing out, and who one is. */
@RestController
@RequestMapping("/api/v1")
class PeopleController {
    private final Sessions sessions;
    private final People people;

    PeopleController(Sessions sessions, People people) {
        this.sessions = sessions;
        this.people = people;
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
}
