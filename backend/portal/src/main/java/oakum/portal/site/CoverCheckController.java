package oakum.portal.site;

import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

@RestController
@Tag(name = "Cover checks")
@RequestMapping("/api/v1/houses/{house}/cover-checks")
class CoverCheckController {
    private final CoverChecks checks;

    CoverCheckController(CoverChecks checks) {
        this.checks = checks;
    }

    record CoverCheckWanted(@NotBlank @Size(max = 8) String code) {}

    /** A place for a row that repeats. */
    record PlaceWanted(
            @NotBlank @Size(max = 20) String templateRow,
            @NotBlank @Size(max = 60) String place) {}

    record RowAcceptance(@NotBlank @Size(max = 1000) String reason) {}

    record CoverCheckSigning(@NotBlank @Size(max = 7) String copyCode) {}

    @GetMapping
    CoverChecksOfHouse listCoverChecks(@PathVariable String house) {
        return checks.list(house);
    }

    @PostMapping
    @ResponseStatus(HttpStatus.CREATED)
    CoverCheckShown makeCoverCheck(@PathVariable String house, @Valid @RequestBody CoverCheckWanted body) {
        return checks.make(house, body.code());
    }

    @GetMapping("/{code}")
    CoverCheckShown getCoverCheck(@PathVariable String house, @PathVariable String code) {
        return checks.get(house, code);
    }

    @PostMapping("/{code}/places")
    @ResponseStatus(HttpStatus.CREATED)
    CoverCheckShown addCoverCheckPlace(
            @PathVariable String house, @PathVariable String code, @Valid @RequestBody PlaceWanted body) {
        return checks.addPlace(house, code, body.templateRow(), body.place());
    }

    @PostMapping("/{code}/rows/{row}/answers")
    CoverCheckShown answerRow(
            @PathVariable String house,
            @PathVariable String code,
            @PathVariable String row,
            @Valid @RequestBody RowAnswerSent body) {
        return checks.answer(house, code, row, body);
    }

    @PostMapping("/{code}/rows/{row}/acceptance")
    CoverCheckShown acceptRow(
            @PathVariable String house,
            @PathVariable String code,
            @PathVariable String row,
            @Valid @RequestBody RowAcceptance body) {
        return checks.accept(house, code, row, body.reason());
    }

    @PostMapping("/{code}/signature")
    CoverCheckShown signCoverCheck(
            @PathVariable String house, @PathVariable String code, @Valid @RequestBody CoverCheckSigning body) {
        return checks.sign(house, code, body.copyCode());
    }
}
