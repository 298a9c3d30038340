package oakum.portal.site;

import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import java.time.LocalDate;
import java.util.List;
import oakum.portal.http.EntityTag;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

@RestController
@Tag(name = "Running clocks")
@RequestMapping("/api/v1/houses/{house}/clocks")
class ClockController {
    private final RunningClocks clocks;

    ClockController(RunningClocks clocks) {
        this.clocks = clocks;
    }

    record ClockTrial(@NotNull LocalDate plannedOn) {}

    @GetMapping
    List<ClockShown> listClocks(@PathVariable String house) {
        return clocks.list(house);
    }

    @PostMapping
    ResponseEntity<ClockShown> startClock(@PathVariable String house, @Valid @RequestBody NewClock body) {
        return tagged(HttpStatus.CREATED, clocks.start(house, body));
    }

    @GetMapping("/{id}")
    ResponseEntity<ClockShown> getClock(@PathVariable String house, @PathVariable String id) {
        return tagged(HttpStatus.OK, clocks.get(house, id));
    }

    @PutMapping("/{id}")
    ResponseEntity<ClockShown> changeClock(
            @PathVariable String house,
            @PathVariable String id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @Valid @RequestBody ClockChange body) {
        return tagged(HttpStatus.OK, clocks.change(house, id, ifMatch, body));
    }

    @PostMapping("/{id}/trial")
    ClockTrialShown tryClock(@PathVariable String house, @PathVariable String id, @Valid @RequestBody ClockTrial body) {
        return clocks.trial(house, id, body.plannedOn());
    }

    private static ResponseEntity<ClockShown> tagged(HttpStatus status, ClockShown clock) {
        return ResponseEntity.status(status).eTag(EntityTag.of(clock.version())).body(clock);
    }
}
