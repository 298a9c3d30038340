package oakum.portal.simulation;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import oakum.portal.calculation.AnswerJson;
import oakum.portal.http.Page;
import oakum.portal.job.Job;
import oakum.portal.simulation.Simulations.SimulationAsked;
import oakum.portal.simulation.Simulations.TrialAsked;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.JsonNode;

@RestController
@RequestMapping("/api/v1/houses/{house}/simulations")
@Tag(name = "Simulations")
class SimulationController {
    private final Simulations simulations;

    SimulationController(Simulations simulations) {
        this.simulations = simulations;
    }

    /**
     * A run with its answer.
     *
     * @param answer as the calculation itself answers; null while there is none or where the run could not go through
     */
    record SimulationResult(
            Simulation simulation,

            @Schema(implementation = AnswerJson.class) @Nullable
            JsonNode answer) {}

    /** One run as it is and up to eight more with changes. */
    record ComparisonAsked(SimulationAsked simulation, List<TrialAsked> trials) {}

    /** The jobs of a comparison, the run as it is first. */
    record ComparisonJobs(List<Job> items) {}

    @Operation(
            summary = "Ask for a long run",
            description =
                    "Answers 202 with the job, whose id is that of the simulation. Inputs come as the calculation takes them,"
                            + " as bindings of a proof, or both; later bindings override.")
    @PostMapping
    ResponseEntity<Job> askSimulation(@PathVariable String house, @RequestBody SimulationAsked asked) {
        Job job = simulations.ask(house, asked);
        return ResponseEntity.accepted()
                .location(URI.create("/api/v1/houses/" + house + "/jobs/" + job.id()))
                .body(job);
    }

    @Operation(summary = "Ask for trials side by side: one job each, the run as it is first")
    @PostMapping("/comparison")
    ResponseEntity<ComparisonJobs> askComparison(@PathVariable String house, @RequestBody ComparisonAsked asked) {
        return ResponseEntity.accepted()
                .body(new ComparisonJobs(simulations.compare(house, asked.simulation(), asked.trials())));
    }

    @Operation(summary = "Long runs of a house, the newest first")
    @GetMapping
    Page<Simulation> listSimulations(
            @PathVariable String house,
            @RequestParam(required = false) @Nullable UUID comparison,
            @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(defaultValue = "20") int limit) {
        return simulations.page(house, comparison, cursor, limit);
    }

    @Operation(summary = "A long run with its answer")
    @GetMapping("/{id}")
    SimulationResult getSimulation(@PathVariable String house, @PathVariable UUID id) {
        return new SimulationResult(simulations.get(house, id), simulations.answer(house, id));
    }

    @Operation(summary = "The run day by day, or some days of it")
    @GetMapping("/{id}/tape")
    Tape getSimulationTape(
            @PathVariable String house,
            @PathVariable UUID id,
            @RequestParam(defaultValue = "0") int fromDay,
            @RequestParam(defaultValue = "2147483647") int toDay) {
        return simulations.strip(house, id).between(fromDay, toDay);
    }

    @Operation(summary = "The construction on one day, cell by cell")
    @GetMapping("/{id}/tape/{day}")
    Tape.TapeProfile getSimulationDay(@PathVariable String house, @PathVariable UUID id, @PathVariable int day) {
        return simulations.profile(house, id, day);
    }
}
