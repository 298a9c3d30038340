package oakum.portal.aftercare;

import io.swagger.v3.oas.annotations.Operation;
import java.net.URI;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import oakum.portal.http.EntityTag;
import oakum.portal.http.Page;
import oakum.portal.http.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RequestMapping("/api/v1")
class AftercareController {
    private static final int LARGEST_PAGE = 200;

    private final Filters filters;
    private final Rounds rounds;
    private final Visits visits;
    private final Stock stock;
    private final Care care;

    AftercareController(Filters filters, Rounds rounds, Visits visits, Stock stock, Care care) {
        this.filters = filters;
        this.rounds = rounds;
        this.visits = visits;
        this.stock = stock;
        this.care = care;
    }

    /** A load as somebody gives it. */
    record TypedLoad(LocalDate on, double load) {}

    /** The days whose loads are computed from readings. */
    record LoadDays(LocalDate from, LocalDate to) {}

    /** How many days have a load now. */
    record LoadDaysKept(int days) {}

    /** The day a visit is planned for, or null to take it away. */
    record VisitDay(@Nullable LocalDate plannedOn) {}

    /** Where a house is reached and since when it is lived in. */
    record CareOfHouse(String place, @Nullable LocalDate handedOverOn) {}

    /** Places with their usual weekday. */
    record PlaceList(List<Care.Place> items) {}

    @Operation(summary = "Filters over all houses, the first due first")
    @GetMapping("/filters")
    Page<FilterFollowUp> listFilters(
            @RequestParam(required = false) @Nullable String cursor, @RequestParam(defaultValue = "50") int limit) {
        return filters.page(cursor, size(limit));
    }

    @Operation(summary = "Follow a filter of a house")
    @PostMapping("/houses/{house}/filters")
    @ResponseStatus(HttpStatus.CREATED)
    FilterFollowUp addFilter(@PathVariable String house, @RequestBody NewFilter filter) {
        filters.add(house, filter);
        return followUp(house, filter.id());
    }

    @Operation(summary = "Keep the load of a day")
    @PostMapping("/houses/{house}/filters/{filter}/loads")
    FilterFollowUp keepFilterLoad(
            @PathVariable String house, @PathVariable String filter, @RequestBody TypedLoad load) {
        filters.sample(house, filter, load.on(), load.load());
        return followUp(house, filter);
    }

    @Operation(summary = "Compute the loads of days from readings")
    @PostMapping("/houses/{house}/filters/{filter}/loads/from-readings")
    LoadDaysKept computeFilterLoads(
            @PathVariable String house, @PathVariable String filter, @RequestBody LoadDays days) {
        return new LoadDaysKept(filters.sampleFromReadings(house, filter, days.from(), days.to()));
    }

    @Operation(summary = "Note what happened in a house")
    @PostMapping("/houses/{house}/events")
    @ResponseStatus(HttpStatus.CREATED)
    Filters.HouseEvent noteHouseEvent(@PathVariable String house, @RequestBody Filters.HouseEvent event) {
        filters.event(house, event);
        return event;
    }

    @Operation(summary = "Take a house into care")
    @PutMapping("/houses/{house}/care")
    Care.HouseInCare takeIntoCare(@PathVariable String house, @RequestBody CareOfHouse of) {
        return care.take(new Care.HouseInCare(house, of.place(), of.handedOverOn()));
    }

    @Operation(summary = "Places and their usual weekday")
    @GetMapping("/places")
    PlaceList listPlaces() {
        return new PlaceList(care.places());
    }

    @Operation(summary = "Make a place known or change its weekday")
    @PostMapping("/places")
    Care.Place keepPlace(@RequestBody Care.Place place) {
        return care.place(place);
    }

    @Operation(summary = "Note that somebody is at a place on a day")
    @PostMapping("/trips")
    Care.Trip noteTrip(@RequestBody Care.Trip trip) {
        return care.trip(trip);
    }

    @Operation(summary = "Rounds, proposed and kept")
    @GetMapping("/rounds")
    Rounds.RoundList listRounds() {
        return rounds.list();
    }

    @Operation(summary = "Keep a round")
    @PostMapping("/rounds")
    @ResponseStatus(HttpStatus.CREATED)
    Rounds.KeptRound keepRound(@RequestBody Rounds.NewRound round) {
        return rounds.keep(round);
    }

    @Operation(summary = "Visits over all houses, open ones first")
    @GetMapping("/visits")
    Page<Visit> listVisits(
            @RequestParam(required = false) @Nullable String cursor, @RequestParam(defaultValue = "50") int limit) {
        return visits.page(cursor, size(limit));
    }

    @Operation(summary = "Make a visit")
    @PostMapping("/visits")
    ResponseEntity<Visit> addVisit(@RequestBody Visits.NewVisit visit) {
        Visit added = visits.add(visit);
        return ResponseEntity.created(URI.create("/api/v1/visits/" + added.id()))
                .eTag(EntityTag.of(added.version()))
                .body(added);
    }

    @Operation(summary = "One visit")
    @GetMapping("/visits/{id}")
    ResponseEntity<Visit> getVisit(@PathVariable UUID id) {
        return tagged(visits.get(id));
    }

    @Operation(summary = "Plan a visit for a day")
    @PutMapping("/visits/{id}")
    ResponseEntity<Visit> planVisit(
            @PathVariable UUID id,
            @RequestBody VisitDay day,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch) {
        return tagged(visits.plan(id, day.plannedOn(), ifMatch));
    }

    @Operation(summary = "Close a visit with what was found and left")
    @PostMapping("/visits/{id}/closing")
    ResponseEntity<Visit> closeVisit(@PathVariable UUID id, @RequestBody VisitClosing closing) {
        return tagged(visits.close(id, closing));
    }

    @Operation(summary = "Filters on the shelf, and what to order")
    @GetMapping("/stock")
    Stock.StockList listStock() {
        return stock.list();
    }

    @Operation(summary = "Keep a count of the shelf")
    @PutMapping("/stock")
    Stock.StockCount countStock(
            @RequestBody Stock.StockCount count,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch) {
        return stock.count(count, ifMatch);
    }

    private static int size(int limit) {
        return Math.min(Math.max(limit, 1), LARGEST_PAGE);
    }

    private FilterFollowUp followUp(String house, String filter) {
        return filters.list().stream()
                .filter(f -> f.house().equals(house) && f.filter().equals(filter))
                .findFirst()
                .orElseThrow(() -> Problem.notFound("filter", filter));
    }

    private static ResponseEntity<Visit> tagged(Visit visit) {
        return ResponseEntity.ok().eTag(EntityTag.of(visit.version())).body(visit);
    }
}
