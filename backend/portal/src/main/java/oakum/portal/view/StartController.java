package oakum.portal.view;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import oakum.portal.people.Role;
import org.jspecify.annotations.Nullable;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** The first page of whoever signed in. */
@RestController
@RequestMapping("/api/v1/views")
class StartController {
    private final Map<Role, Start> starts = new EnumMap<>(Role.class);
    private final Sights sights;

    StartController(List<Start> starts, Sights sights) {
        starts.forEach(start -> this.starts.put(start.role(), start));
        this.sights = sights;
    }

    /**
     * What the caller wants first.
     *
     * @param role for somebody who holds several; the first one held where left out
     */
    @GetMapping("/start")
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    StartPage start(@RequestParam(required = false) @Nullable Role role) {
        Sight sight = sights.of(role);
        return sight == null
                ? new StartPage(
                        "", "", "Nothing is shared with you yet.", "The principal shares houses.", List.of(), List.of())
                : Objects.requireNonNull(starts.get(sight.role())).compose(sight);
    }
}
