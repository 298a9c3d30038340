package oakum.portal.document;

import io.swagger.v3.oas.annotations.Operation;
import java.nio.charset.StandardCharsets;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.util.DigestUtils;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RequestMapping("/api/v1/calendars")
class CalendarController {
    private static final MediaType CALENDAR = new MediaType("text", "calendar", StandardCharsets.UTF_8);

    private final Calendars calendars;

    CalendarController(Calendars calendars) {
        this.calendars = calendars;
    }

    /**
     * The address of a person's calendar; shown once.
     *
     * @param path to be put behind the portal's own address
     */
    record CalendarAddress(String path) {}

    @Operation(summary = "Make or renew the address of my calendar; an earlier one ends")
    @PostMapping
    @ResponseStatus(HttpStatus.CREATED)
    CalendarAddress renewCalendar() {
        return new CalendarAddress("/api/v1/calendars/" + calendars.renew() + "/care.ics");
    }

    @Operation(summary = "Due windows, rounds and visits as a calendar (RFC 5545)")
    @GetMapping(path = "/{secret}/care.ics", produces = "text/calendar")
    ResponseEntity<String> careCalendar(@PathVariable String secret) {
        String feed = calendars.feed(secret);
        return ResponseEntity.ok()
                .contentType(CALENDAR)
                .cacheControl(CacheControl.noCache().cachePrivate())
                .eTag("\"" + DigestUtils.md5DigestAsHex(feed.getBytes(StandardCharsets.UTF_8)) + "\"")
                .body(feed);
    }
}
