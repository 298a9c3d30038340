package oakum.portal.site;

import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import java.util.List;
import java.util.UUID;
import oakum.portal.http.EntityTag;
import oakum.portal.people.Role;
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
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@RestController
@Tag(name = "Loose ends")
@RequestMapping("/api/v1")
class LooseEndController {
    private final LooseEnds looseEnds;

    LooseEndController(LooseEnds looseEnds) {
        this.looseEnds = looseEnds;
    }

    @GetMapping("/loose-ends")
    List<LooseEndShown> listAllLooseEnds(@RequestParam(required = false) @Nullable Role role) {
        return looseEnds.listAll(role);
    }

    @GetMapping("/houses/{house}/loose-ends")
    List<LooseEndShown> listLooseEnds(
            @PathVariable String house,
            @RequestParam(required = false) @Nullable Role role,
            @RequestParam(defaultValue = "false") boolean open) {
        return looseEnds.list(house, role, open);
    }

    @PostMapping("/houses/{house}/loose-ends")
    ResponseEntity<LooseEndShown> openLooseEnd(@PathVariable String house, @Valid @RequestBody NewLooseEnd body) {
        return tagged(HttpStatus.CREATED, looseEnds.open(house, body));
    }

    @GetMapping("/houses/{house}/loose-ends/{id}")
    ResponseEntity<LooseEndShown> getLooseEnd(@PathVariable String house, @PathVariable UUID id) {
        return tagged(HttpStatus.OK, looseEnds.get(house, id));
    }

    @PutMapping("/houses/{house}/loose-ends/{id}")
    ResponseEntity<LooseEndShown> changeLooseEnd(
            @PathVariable String house,
            @PathVariable UUID id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @Valid @RequestBody LooseEndChange body) {
        return tagged(HttpStatus.OK, looseEnds.change(house, id, ifMatch, body));
    }

    @PostMapping("/houses/{house}/loose-ends/{id}/closing")
    ResponseEntity<LooseEndShown> closeLooseEnd(
            @PathVariable String house,
            @PathVariable UUID id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @Valid @RequestBody LooseEndClosing body) {
        return tagged(HttpStatus.OK, looseEnds.close(house, id, ifMatch, body));
    }

    private static ResponseEntity<LooseEndShown> tagged(HttpStatus status, LooseEndShown looseEnd) {
        return ResponseEntity.status(status)
                .eTag(EntityTag.of(looseEnd.version()))
                .body(looseEnd);
    }
}
