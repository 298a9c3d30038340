package oakum.portal.decision;

import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.List;
import java.util.UUID;
import oakum.portal.http.EntityTag;
import oakum.portal.people.Role;
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
import org.springframework.web.bind.annotation.RestController;

/** Decisions over HTTP. */
@RestController
@RequestMapping("/api/v1")
@Tag(name = "Decisions")
class DecisionController {
    private final DecisionStore decisions;

    DecisionController(DecisionStore decisions) {
        this.decisions = decisions;
    }

    /**
     * A decision to be opened.
     *
     * @param content null takes it from the usual decisions
     */
    record DecisionOpening(String code, @Nullable DecisionContent content) {}

    /** A remark to be made. */
    record RemarkDraft(String text) {}

    /**
     * An approval of exactly what the copy code stands for.
     *
     * @param exception why it is approved although a proof fails, or null
     */
    record ApprovalDraft(
            String copyCode, Role role, @Nullable String exception) {}

    /** Why an approval is withdrawn. */
    record Withdrawal(String reason) {}

    /** How far an order line has come. */
    record OrderChange(OrderLine.State state, String note) {}

    /** The usual decisions and how they touch each other. */
    record DecisionKinds(List<DecisionKind> kinds, List<Arrow> arrows) {}

    @GetMapping("/decision-kinds")
    DecisionKinds listDecisionKinds() {
        return new DecisionKinds(DecisionTable.KINDS, DecisionTable.ARROWS);
    }

    @GetMapping("/houses/{house}/decisions")
    List<DecisionView> listDecisions(@PathVariable String house) {
        return decisions.list(house);
    }

    @PostMapping("/houses/{house}/decisions")
    ResponseEntity<DecisionView> openDecision(@PathVariable String house, @RequestBody DecisionOpening opening) {
        return tagged(HttpStatus.CREATED, decisions.open(house, opening.code(), opening.content()));
    }

    @GetMapping("/houses/{house}/decisions/{code}")
    ResponseEntity<DecisionView> getDecision(@PathVariable String house, @PathVariable String code) {
        return tagged(HttpStatus.OK, decisions.find(house, code));
    }

    @PutMapping("/houses/{house}/decisions/{code}")
    ResponseEntity<DecisionView> writeDecision(
            @PathVariable String house,
            @PathVariable String code,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @RequestBody DecisionContent content) {
        return tagged(HttpStatus.OK, decisions.write(house, code, content, ifMatch));
    }

    @PostMapping("/houses/{house}/decisions/{code}/comments")
    ResponseEntity<DecisionView> commentOnDecision(
            @PathVariable String house, @PathVariable String code, @RequestBody RemarkDraft remark) {
        return tagged(HttpStatus.CREATED, decisions.say(house, code, remark.text()));
    }

    @PostMapping("/houses/{house}/decisions/{code}/alternatives")
    ResponseEntity<DecisionView> addAlternative(
            @PathVariable String house, @PathVariable String code, @RequestBody Alternative alternative) {
        return tagged(HttpStatus.CREATED, decisions.propose(house, code, alternative));
    }

    @PostMapping("/houses/{house}/decisions/{code}/approvals")
    ResponseEntity<DecisionView> approveDecision(
            @PathVariable String house, @PathVariable String code, @RequestBody ApprovalDraft approval) {
        return tagged(
                HttpStatus.CREATED,
                decisions.approve(house, code, approval.copyCode(), approval.role(), approval.exception()));
    }

    @PostMapping("/houses/{house}/decisions/{code}/approvals/{approval}/withdrawal")
    ResponseEntity<DecisionView> withdrawApproval(
            @PathVariable String house,
            @PathVariable String code,
            @PathVariable UUID approval,
            @RequestBody Withdrawal withdrawal) {
        return tagged(HttpStatus.OK, decisions.withdraw(house, code, approval, withdrawal.reason()));
    }

    @PutMapping("/houses/{house}/decisions/{code}/orders/{line}")
    ResponseEntity<DecisionView> changeOrder(
            @PathVariable String house,
            @PathVariable String code,
            @PathVariable String line,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @RequestBody OrderChange change) {
        return tagged(HttpStatus.OK, decisions.order(house, code, line, change.state(), change.note(), ifMatch));
    }

    private static ResponseEntity<DecisionView> tagged(HttpStatus status, DecisionView view) {
        return ResponseEntity.status(status).eTag(EntityTag.of(view.version())).body(view);
    }
}
