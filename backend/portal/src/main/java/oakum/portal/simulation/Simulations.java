package oakum.portal.simulation;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Canonical;
import oakum.portal.calculation.Calculations;
import oakum.portal.houserecord.BindingDraft;
import oakum.portal.houserecord.Drawn;
import oakum.portal.houserecord.HouseCalculations;
import oakum.portal.houserecord.Proofs;
import oakum.portal.houserecord.ValueDifference;
import oakum.portal.houserecord.standing.Binding;
import oakum.portal.http.Cursor;
import oakum.portal.http.Page;
import oakum.portal.http.Problem;
import oakum.portal.job.Job;
import oakum.portal.job.JobState;
import oakum.portal.job.Jobs;
import oakum.portal.people.Access;
import oakum.portal.people.Permission;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.databind.JsonNode;

/** Asking for long runs, and looking at what came of them. */
@Service
class Simulations {
    private static final int MOST_LISTED = 100;
    private static final int MOST_TRIALS = 8;
    private static final int LONGEST_TITLE = 200;

    private final SimulationRows rows;
    private final ObjectProvider<SimulationKind> kinds;
    private final Calculations calculations;
    private final Proofs proofs;
    private final HouseCalculations filled;
    private final Jobs jobs;
    private final Access access;
    private final Clock clock;

    Simulations(
            SimulationRows rows,
            ObjectProvider<SimulationKind> kinds,
            Calculations calculations,
            Proofs proofs,
            HouseCalculations filled,
            Jobs jobs,
            Access access,
            Clock clock) {
        this.rows = rows;
        this.kinds = kinds;
        this.calculations = calculations;
        this.proofs = proofs;
        this.filled = filled;
        this.jobs = jobs;
        this.access = access;
        this.clock = clock;
    }

    /**
     * What to run: what the record says of an assembly, then the inputs, then the bindings; later ones override earlier
     * ones.
     *
     * @param calculation id of a calculation that runs as a job
     * @param assembly short name of an assembly that fills the calculation, or null
     * @param inputs as the calculation itself takes them, or null
     * @param bindings as of a proof, or null
     */
    record SimulationAsked(
            String title,
            String calculation,
            @Nullable String assembly,
            @Nullable JsonNode inputs,
            @Nullable List<BindingDraft> bindings) {}

    /** One of several runs side by side: what is other than in the first. */
    record TrialAsked(String title, List<BindingDraft> changes) {}

    @Transactional
    Job ask(String house, SimulationAsked asked) {
        access.require(Permission.EDIT_PROOF, house);
        return ask(house, asked.title(), asked.calculation(), bindings(house, asked), null);
    }

    /** Asks for one run as it is and one more for each trial. */
    @Transactional
    List<Job> compare(String house, SimulationAsked asked, List<TrialAsked> trials) {
        access.require(Permission.EDIT_PROOF, house);
        if (trials.isEmpty() || trials.size() > MOST_TRIALS) {
            throw Problem.unprocessable(
                    "too-many-trials", "trials", "Compare 1 to " + MOST_TRIALS + " trials with the run as it is.");
        }
        UUID comparison = UUID.randomUUID();
        List<Binding> base = bindings(house, asked);
        List<Job> all = new ArrayList<>();
        all.add(ask(house, asked.title(), asked.calculation(), base, comparison));
        for (TrialAsked trial : trials) {
            List<Binding> changed = new ArrayList<>(base);
            trial.changes().forEach(change -> changed.add(change.binding()));
            all.add(ask(house, trial.title(), asked.calculation(), changed, comparison));
        }
        return all;
    }

    private List<Binding> bindings(String house, SimulationAsked asked) {
        List<Binding> bindings = new ArrayList<>();
        if (asked.assembly() != null) {
            bindings.addAll(
                    filled.fill(house, asked.calculation(), asked.assembly()).bindings());
        }
        if (asked.inputs() != null) {
            Record read =
                    calculations.read(calculations.find(asked.calculation()).inputType(), asked.inputs());
            Canonical.flatten(read).forEach((input, text) -> bindings.add(Binding.typed(input, text, "typed")));
        }
        if (asked.bindings() != null) {
            asked.bindings().forEach(draft -> bindings.add(draft.binding()));
        }
        return bindings;
    }

    private Job ask(String house, String title, String calculation, List<Binding> bindings, @Nullable UUID comparison) {
        if (title.isBlank() || title.length() > LONGEST_TITLE) {
            throw Problem.unprocessable(
                    "simulation-title", "title", "A run's title has 1 to " + LONGEST_TITLE + " characters.");
        }
        Drawn drawn = proofs.draw(house, calculation, bindings);
        SimulationKind kind = kinds.stream()
                .filter(k -> k.kind().equals(calculation))
                .findFirst()
                .orElseThrow(() -> Problem.unprocessable(
                        "no-long-run",
                        "calculation",
                        calculation + " answers at once: POST /api/v1/calculations/" + calculation + "."));
        kind.check(drawn.inputs());
        Job job = jobs.ask(kind.kind(), house, title, "{}");
        rows.add(new SimulationRows.Run(
                job.id(),
                house,
                title,
                calculation,
                calculations.find(calculation).version(),
                comparison,
                bindings,
                drawn.relied(),
                drawn.inputs(),
                drawn.revisions(),
                job.askedBy(),
                clock.instant(),
                null,
                null));
        return job;
    }

    /** The newest first. */
    @Transactional(readOnly = true)
    Page<Simulation> page(String house, @Nullable UUID comparison, @Nullable String cursor, int limit) {
        access.require(Permission.VIEW_HOUSE, house);
        int size = Math.max(1, Math.min(MOST_LISTED, limit));
        SimulationRows.@Nullable After after = Cursor.key(
                cursor,
                2,
                parts -> new SimulationRows.After(Instant.parse(parts.get(0)), UUID.fromString(parts.get(1))));
        Page<SimulationRows.Run> page = Cursor.page(
                rows.list(house, comparison, after, size + 1),
                size,
                run -> Cursor.join(run.askedAt().toString(), run.id().toString()));
        Map<UUID, Job> known = new HashMap<>(jobs.list(house).stream().collect(Collectors.toMap(Job::id, job -> job)));
        List<List<ValueDifference>> changed = proofs.differences(
                house, page.items().stream().map(SimulationRows.Run::bound).toList());
        List<Simulation> items = new ArrayList<>();
        for (int i = 0; i < page.items().size(); i++) {
            SimulationRows.Run run = page.items().get(i);
            items.add(shown(run, known.computeIfAbsent(run.id(), id -> jobs.get(house, id)), changed.get(i)));
        }
        return new Page<>(items, page.next());
    }

    /**
     * One run.
     *
     * @throws Problem 404
     */
    @Transactional(readOnly = true)
    Simulation get(String house, UUID id) {
        SimulationRows.Run run = find(house, id);
        return shown(
                run,
                jobs.get(house, id),
                proofs.differences(house, List.of(run.bound())).get(0));
    }

    /** Its answer as JSON; null where it has none. */
    @Transactional(readOnly = true)
    @Nullable
    JsonNode answer(String house, UUID id) {
        find(house, id);
        return rows.answer(id);
    }

    /**
     * The run day by day, without profiles.
     *
     * @throws Problem 404, and 409 while there is nothing to see
     */
    @Transactional(readOnly = true)
    Tape strip(String house, UUID id) {
        find(house, id);
        return rows.strip(id).orElseThrow(() -> noTape(house, id));
    }

    /**
     * The construction on one day.
     *
     * @throws Problem 404, and 409 while there is nothing to see
     */
    @Transactional(readOnly = true)
    Tape.TapeProfile profile(String house, UUID id, int day) {
        Tape strip = strip(house, id);
        return rows.profile(id, day)
                .orElseThrow(() -> new Problem(
                        HttpStatus.NOT_FOUND,
                        "not-found",
                        strip.profileFromDay() == null
                                ? "No day of this run has a profile."
                                : "Day " + day + " has no profile; days " + strip.profileFromDay() + " to "
                                        + strip.profileToDay() + " have one."));
    }

    private Problem noTape(String house, UUID id) {
        Job job = jobs.get(house, id);
        return Problem.conflict(
                "job-has-no-result",
                job.failure() == null
                        ? "This work is " + job.state().name().toLowerCase(Locale.ROOT)
                                + "; its days come when it is done."
                        : job.failure());
    }

    private SimulationRows.Run find(String house, UUID id) {
        access.require(Permission.VIEW_HOUSE, house);
        return rows.find(id)
                .filter(run -> run.house().equals(house))
                .orElseThrow(() -> Problem.notFound("simulation", id));
    }

    private Simulation shown(SimulationRows.Run run, Job job, List<ValueDifference> changed) {
        String now = calculations.all().stream()
                .filter(c -> c.id().equals(run.calculation()))
                .map(Calculation::version)
                .findFirst()
                .orElse("");
        List<String> actions = new ArrayList<>(job.actions());
        if (job.state() == JobState.DONE && access.may(Permission.EDIT_PROOF, run.house())) {
            actions.add("keep-as-proof");
        }
        return new Simulation(
                run.id(),
                run.house(),
                run.title(),
                run.calculation(),
                run.version(),
                run.comparison(),
                job.state(),
                job.doneFraction(),
                job.step(),
                job.failure(),
                run.stopped() != null,
                run.outputs() == null ? List.of() : run.outputs(),
                changed,
                now.equals(run.version()) ? null : now,
                run.revisions(),
                run.bindings(),
                run.askedBy(),
                run.askedAt(),
                job.endedAt(),
                actions);
    }
}
