package oakum.portal.aftercare;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.net.URI;
import java.time.LocalDate;
import java.util.UUID;
import oakum.portal.http.Page;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@RestController
@Tag(name = "Owner's reports")
@RequestMapping("/api/v1")
class OwnerReportController {
    private final OwnerReports reports;

    OwnerReportController(OwnerReports reports) {
        this.reports = reports;
    }

    /** The office's answer; with a day, a visit is planned for it. */
    record ReportAnswer(
            @NotBlank @Size(max = 4000) String text,
            @Nullable LocalDate visitOn) {}

    @Operation(summary = "Owners' reports over all houses, the latest first")
    @GetMapping("/reports")
    Page<OwnerReport> listAllReports(
            @RequestParam(defaultValue = "false") boolean waiting,
            @RequestParam(required = false) @Nullable String cursor) {
        return reports.all(waiting, cursor);
    }

    @Operation(summary = "The reports of a house, the latest first")
    @GetMapping("/houses/{house}/reports")
    Page<OwnerReport> listReports(@PathVariable String house, @RequestParam(required = false) @Nullable String cursor) {
        return reports.ofHouse(house, cursor);
    }

    @Operation(summary = "Times at which somebody can come")
    @GetMapping("/houses/{house}/reports/slots")
    OwnerReports.OfferedSlots listReportSlots(@PathVariable String house) {
        return reports.slots(house);
    }

    @Operation(summary = "Tell the office what was seen")
    @PostMapping("/houses/{house}/reports")
    ResponseEntity<OwnerReport> sendReport(@PathVariable String house, @Valid @RequestBody OwnerReportSent report) {
        OwnerReport kept = reports.report(house, report);
        return ResponseEntity.created(URI.create("/api/v1/houses/" + house + "/reports/" + kept.id()))
                .body(kept);
    }

    @Operation(summary = "One report")
    @GetMapping("/houses/{house}/reports/{id}")
    OwnerReport getReport(@PathVariable String house, @PathVariable UUID id) {
        return reports.get(house, id);
    }

    @Operation(summary = "Answer a report")
    @PostMapping("/houses/{house}/reports/{id}/answer")
    OwnerReport answerReport(
            @PathVariable String house, @PathVariable UUID id, @Valid @RequestBody ReportAnswer answer) {
        return reports.answer(house, id, answer.text(), answer.visitOn());
    }
}
