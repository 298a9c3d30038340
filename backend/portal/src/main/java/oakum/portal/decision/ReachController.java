package oakum.portal.decision;

import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.List;
import oakum.portal.http.Cursor;
import oakum.portal.http.Page;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/** What a change reaches, and trials, over HTTP. */
@RestController
@RequestMapping("/api/v1")
@Tag(name = "Reach")
class ReachController {
    private static final int LARGEST_PAGE = 200;

    private final ReachStore reach;

    ReachController(ReachStore reach) {
        this.reach = reach;
    }

    /** Trials to be computed side by side. */
    record TrialSet(List<Trial> trials) {}

    @GetMapping("/houses/{house}/reach")
    Reach getReach(@PathVariable String house) {
        return reach.reach(house);
    }

    @PostMapping("/houses/{house}/trials")
    Reach computeTrial(@PathVariable String house, @RequestBody Trial trial) {
        return reach.trial(house, trial);
    }

    @PostMapping("/houses/{house}/trials/comparison")
    ReachStore.Comparison compareTrials(@PathVariable String house, @RequestBody TrialSet set) {
        return reach.compare(house, set.trials());
    }

    @PostMapping("/houses/{house}/trials/taking")
    @ResponseStatus(HttpStatus.CREATED)
    Reach takeTrial(@PathVariable String house, @RequestBody Trials.Taking taking) {
        return reach.take(house, taking);
    }

    @GetMapping("/houses/{house}/changes")
    Page<ChangeEntry> listChanges(
            @PathVariable String house,
            @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(defaultValue = "50") int limit) {
        return page(reach.history(house), cursor, limit);
    }

    private static Page<ChangeEntry> page(List<ChangeEntry> all, @Nullable String cursor, int limit) {
        int size = Math.min(Math.max(limit, 1), LARGEST_PAGE);
        String after = Cursor.sortKey(cursor);
        List<String> keys = all.stream().map(ReachController::sortKey).toList();
        int begin = after == null ? 0 : keys.indexOf(after) + 1;
        return Cursor.page(all.subList(begin, Math.min(all.size(), begin + size + 1)), size, ReachController::sortKey);
    }

    private static String sortKey(ChangeEntry change) {
        return change.when() + " " + change.houseId() + " " + change.kind() + " " + change.key() + " "
                + change.number();
    }
}
