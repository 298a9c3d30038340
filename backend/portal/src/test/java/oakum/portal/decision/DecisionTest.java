package oakum.portal.decision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static org.springframework.http.MediaType.APPLICATION_JSON;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.put;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import oakum.physics.calculation.Verdict;
import oakum.portal.PortalTest;
import oakum.portal.SignedIn;
import oakum.portal.houserecord.HouseFixtures;
import oakum.portal.houserecord.HouseRecord;
import oakum.portal.houserecord.Houses;
import oakum.portal.houserecord.PartKind;
import oakum.portal.houserecord.Proofs;
import oakum.portal.houserecord.ValueChange;
import oakum.portal.http.Problem;
import oakum.portal.people.Accounts;
import oakum.portal.people.AsPortal;
import oakum.portal.people.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import tools.jackson.databind.node.DoubleNode;
import tools.jackson.databind.node.StringNode;

/** The walk of the design: a hood of 400 cfm is approved, then somebody chooses one of 600. */
@PortalTest
class DecisionTest {
    private static final double HOOD_400 = 0.18878;
    private static final double HOOD_600 = 0.28317;
    private static final String HOOD = "air.exhaust[rangeHood].ratedFlowM3PerS";
    private static final String MAKE_UP = "air.makeUp[makeUpUnit].flowM3PerS";

    @Autowired
    MockMvc http;

    @Autowired
    Houses houses;

    @Autowired
    HouseRecord record;

    @Autowired
    Proofs proofs;

    @Autowired
    Decisions decisions;

    @Autowired
    Trials trials;

    @Autowired
    Accounts accounts;

    @Autowired
    JdbcClient jdbc;

    String house;

    @BeforeEach
    void a_house_whose_make_up_air_and_circuits_are_approved() {
        house = HouseFixtures.house(houses);
        hood(HOOD_400);
        AsPortal.run(() -> {
            proofs.make(
                    house,
                    "housePressure",
                    "House pressure, worst case",
                    "house-pressure",
                    HouseFixtures.housePressure(),
                    "first");
            open("D30", List.of(), List.of(change(HOOD, HOOD_400)), List.of());
            open(
                    "D31",
                    List.of("housePressure"),
                    List.of(),
                    List.of(new OrderLine("unit", "make-up unit, 7 kW", OrderLine.State.ORDERED, "")));
            for (String code : List.of("D22", "D25", "D39", "D40", "D41", "D46")) {
                open(code, List.of(), List.of(), List.of());
            }
        });
        for (String code : List.of("D22", "D31", "D39", "D41", "D46")) {
            approve(code, Role.PRINCIPAL);
        }
    }

    private void hood(double flowM3PerS) {
        AsPortal.run(() -> record.save(house, PartKind.AIR, HouseFixtures.air(flowM3PerS), "hood " + flowM3PerS));
    }

    private static ValueChange change(String path, double value) {
        return new ValueChange(path, DoubleNode.valueOf(value));
    }

    private void open(String code, List<String> proofKeys, List<ValueChange> changes, List<OrderLine> orders) {
        DecisionContent usual = DecisionTable.kind(code).orElseThrow().emptyContent();
        List<Alternative> alternatives =
                changes.isEmpty() ? List.of() : List.of(new Alternative("A", "as drawn", changes, ""));
        decisions.open(
                house,
                code,
                new DecisionContent(
                        usual.title(),
                        usual.question(),
                        usual.group(),
                        changes.isEmpty() ? null : "A",
                        alternatives,
                        "",
                        proofKeys,
                        Set.copyOf(usual.approvers()).contains(Role.PRINCIPAL)
                                ? usual.approvers()
                                : List.of(Role.PRINCIPAL),
                        usual.outsideApprovers(),
                        usual.safetyList(),
                        List.of(),
                        orders,
                        null));
    }

    private DecisionView decision(String code) {
        return AsPortal.call(() -> decisions.find(house, code));
    }

    private DecisionView approve(String code, Role role) {
        String copyCode = decision(code).copyCode();
        return SignedIn.call(accounts, role, () -> decisions.approve(house, code, copyCode, role));
    }

    private DecisionView except(String code, Role role, String reason) {
        String copyCode = decision(code).copyCode();
        return SignedIn.call(accounts, role, () -> decisions.approve(house, code, copyCode, role, reason));
    }

    private ApprovalState approval(String code) {
        return decision(code).approvals().get(0).state();
    }

    private static Consumer<Throwable> code(String code) {
        return e -> assertThat(((Problem) e).code()).isEqualTo(code);
    }

    @Test
    void a_bigger_hood_reaches_whom_it_should_and_tells_old_and_new() {
        hood(HOOD_600);
        Reach reach = AsPortal.call(() -> trials.reach(house));
        assertThat(reach.changedValues())
                .extracting("path", "label", "old", "present", "reason")
                .containsExactly(tuple(HOOD, "Range hood: Rated flow", "0.18878", "0.28317", "hood " + HOOD_600));
        assertThat(reach.moved()).extracting("code").containsExactly("D30");
        assertThat(reach.askedNow())
                .extracting("code", "state")
                .containsExactlyInAnyOrder(
                        tuple("D31", Reach.Fate.LAPSED),
                        tuple("D41", Reach.Fate.LAPSED),
                        tuple("D22", Reach.Fate.FRESH_LOOK),
                        tuple("D39", Reach.Fate.FRESH_LOOK));
        assertThat(reach.askedLater())
                .extracting("code", "when", "again")
                .containsExactlyInAnyOrder(
                        tuple("D25", "D31", false), tuple("D40", "D31", false), tuple("D41", "D31", true));
        assertThat(reach.orders()).extracting("title").containsExactly("make-up unit, 7 kW");
        Reach.ChainOutput pressure = reach.chain().get(0).outputs().stream()
                .filter(output -> output.name().equals("housePressurePa"))
                .findFirst()
                .orElseThrow();
        // 50·(20/158)^(1/0.65) and 50·(220/158)^(1/0.65), with the density of the flows taken alike
        assertThat(Double.parseDouble(pressure.old())).isBetween(1.9, 2.3);
        assertThat(Double.parseDouble(pressure.present())).isBetween(82.0, 85.0);
        assertThat(pressure.oldVerdict()).isEqualTo(Verdict.PASSES);
        assertThat(pressure.verdict()).isEqualTo(Verdict.FAILS);
        assertThat(reach.computedInS()).isLessThan(1);
    }

    @Test
    void changed_and_changed_back_leaves_every_approval_standing() {
        hood(HOOD_600);
        assertThat(approval("D31")).isEqualTo(ApprovalState.LAPSED);
        assertThat(approval("D22")).isEqualTo(ApprovalState.FRESH_LOOK);
        assertThat(approval("D46")).isEqualTo(ApprovalState.STANDS);
        hood(HOOD_400);
        for (String code : List.of("D22", "D31", "D39", "D41", "D46")) {
            assertThat(approval(code)).as(code).isEqualTo(ApprovalState.STANDS);
        }
        assertThat(AsPortal.call(() -> trials.reach(house)).askedNow()).isEmpty();
    }

    @Test
    void what_lapsed_stays_so_when_the_proof_is_recomputed_until_it_is_approved_again() {
        hood(HOOD_600);
        AsPortal.run(() -> proofs.recompute(house, "housePressure", "larger cooktop"));
        assertThat(approval("D31")).isEqualTo(ApprovalState.LAPSED);
        assertThat(AsPortal.call(() -> trials.reach(house)).chain()).hasSize(1);
        DecisionView approved = except("D31", Role.PRINCIPAL, "hood locked at low speed until redesigned");
        assertThat(approved.approvals()).extracting("state").contains(ApprovalState.STANDS);
        assertThat(approved.state()).isEqualTo(DecisionState.PARTLY_APPROVED);
        assertThat(approve("D31", Role.MECHANICAL_CONTRACTOR).state()).isEqualTo(DecisionState.APPROVED);
    }

    @Test
    void what_fails_is_approved_only_under_a_written_exception_of_the_principal() {
        hood(HOOD_600);
        AsPortal.run(() -> proofs.recompute(house, "housePressure", "larger cooktop"));
        assertThat(decision("D31").failing())
                .filteredOn("needsException", true)
                .extracting("sentence")
                .first()
                .asString()
                .contains("House pressure, worst case", "at most 5 Pa");
        assertThat(SignedIn.call(accounts, Role.PRINCIPAL, () -> decisions.find(house, "D31"))
                        .actions())
                .contains("approve-with-exception")
                .doesNotContain("approve");
        assertThatThrownBy(() -> approve("D31", Role.PRINCIPAL)).satisfies(code("verdict-fails"));
        assertThatThrownBy(() -> approve("D31", Role.MECHANICAL_CONTRACTOR)).satisfies(code("verdict-fails"));
        assertThatThrownBy(() -> except("D31", Role.MECHANICAL_CONTRACTOR, "it will do"))
                .satisfies(code("not-allowed"));
        assertThat(decision("D31").approvals()).hasSize(1);

        except("D31", Role.PRINCIPAL, "hood locked at low speed until redesigned");
        DecisionView approved = approve("D31", Role.MECHANICAL_CONTRACTOR);
        assertThat(approved.state()).isEqualTo(DecisionState.APPROVED);
        assertThat(approved.approvals())
                .extracting("exceptionReason")
                .containsExactly(
                        null,
                        "hood locked at low speed until redesigned",
                        "as the principal: hood locked at low speed until redesigned");
        assertThat(approved.approvals().get(1).failing()).isNotEmpty();
        assertThatThrownBy(() -> jdbc.sql("update decision.approval set exception_reason = 'x' where id = ?")
                        .params(approved.approvals().get(1).id())
                        .update())
                .hasMessageContaining("never rewritten");
    }

    @Test
    void what_fails_beside_the_leading_results_is_shown_and_asks_for_no_exception() {
        DecisionView shown = decision("D31");
        assertThat(shown.failing())
                .extracting("sentence", "needsException")
                .containsExactly(tuple("House pressure, worst case, issue 1: Make-up failed fails.", false));
        assertThat(shown.approvals().get(0).exceptionReason()).isNull();
        assertThat(shown.approvals().get(0).failing()).hasSize(1);
        DecisionView excepted = except("D31", Role.PRINCIPAL, "hard-wired interlock");
        assertThat(excepted.approvals()).last().extracting("exceptionReason").isEqualTo("hard-wired interlock");
    }

    @Test
    void an_exception_where_nothing_fails_is_refused() {
        assertThatThrownBy(() -> except("D41", Role.PRINCIPAL, "just in case")).satisfies(code("nothing-to-except"));
    }

    @Test
    void an_approval_of_what_is_no_longer_there_is_refused() throws Exception {
        String seen = decision("D31").copyCode();
        hood(HOOD_600);
        AsPortal.run(() -> proofs.recompute(house, "housePressure", "larger cooktop"));
        http.perform(post("/api/v1/houses/{h}/decisions/D31/approvals", house)
                        .with(SignedIn.as(Role.MECHANICAL_CONTRACTOR))
                        .contentType(APPLICATION_JSON)
                        .content("{\"copyCode\": \"" + seen
                                + "\", \"role\": \"MECHANICAL_CONTRACTOR\", \"exception\": null}"))
                .andExpect(status().isConflict())
                .andExpect(jsonPath("$.code").value("not-what-stands"));
        assertThat(decision("D31").approvals()).hasSize(1);
    }

    @Test
    void nobody_approves_on_a_proof_that_is_not_current() {
        hood(HOOD_600);
        String now = decision("D31").copyCode();
        assertThat(decision("D31").actions()).doesNotContain("approve");
        assertThatThrownBy(() -> SignedIn.call(
                        accounts,
                        Role.MECHANICAL_CONTRACTOR,
                        () -> decisions.approve(house, "D31", now, Role.MECHANICAL_CONTRACTOR)))
                .satisfies(code("proof-not-current"));
    }

    @Test
    void approving_twice_is_one_approval_and_only_in_a_role_that_one_holds() throws Exception {
        approve("D31", Role.PRINCIPAL);
        assertThat(decision("D31").approvals()).hasSize(1);
        String body = "{\"copyCode\": \"" + decision("D31").copyCode() + "\", \"role\": \"MECHANICAL_CONTRACTOR\"}";
        for (Role role : new Role[] {Role.DESIGNER, Role.SITE_LEAD, Role.PRINCIPAL}) {
            http.perform(post("/api/v1/houses/{h}/decisions/D31/approvals", house)
                            .with(SignedIn.as(role))
                            .contentType(APPLICATION_JSON)
                            .content(body))
                    .andExpect(status().isForbidden());
        }
    }

    @Test
    void a_withdrawn_approval_stays_on_the_record_and_counts_no_more() throws Exception {
        var approval = decision("D31").approvals().get(0).id();
        http.perform(post("/api/v1/houses/{h}/decisions/D31/approvals/{a}/withdrawal", house, approval)
                        .with(SignedIn.as(Role.MECHANICAL_CONTRACTOR))
                        .contentType(APPLICATION_JSON)
                        .content("{\"reason\": \"not mine\"}"))
                .andExpect(status().isForbidden());
        http.perform(post("/api/v1/houses/{h}/decisions/D31/approvals/{a}/withdrawal", house, approval)
                        .with(SignedIn.as(Role.PRINCIPAL))
                        .contentType(APPLICATION_JSON)
                        .content("{\"reason\": \"second thoughts\"}"))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.state").value("OPEN"))
                .andExpect(jsonPath("$.approvals[0].state").value("WITHDRAWN"));
        assertThatThrownBy(() -> jdbc.sql("delete from decision.approval where id = ?")
                        .params(approval)
                        .update())
                .hasMessageContaining("never deleted");
    }

    @Test
    void an_input_with_the_same_result_is_carried_over_but_not_on_the_safety_list() {
        AsPortal.run(() -> open("D20", List.of("housePressure"), List.of(), List.of()));
        approve("D20", Role.PRINCIPAL);
        // who set the limit is an input of the proof, and changes no number of it
        AsPortal.run(() -> {
            Trial trial = new Trial(
                    "next edition",
                    List.of(new ValueChange("air.limits.source", StringNode.valueOf("firm rules, edition 8"))));
            Reach reach = trials.trial(house, trial);
            assertThat(reach.askedNow()).extracting("code").containsExactly("D31");
            assertThat(reach.askedNow().get(0).because()).containsExactly("safety list: an input changed, same result");
            trials.take(house, new Trials.Taking(trial.changes(), "as built", reach.copyCode(), null, null));
        });
        assertThat(approval("D20")).isEqualTo(ApprovalState.CARRIED_OVER);
        assertThat(decision("D20").state()).isEqualTo(DecisionState.PARTLY_APPROVED);
        assertThat(approval("D31")).isEqualTo(ApprovalState.LAPSED);
    }

    @Test
    void trials_side_by_side_save_nothing_and_the_one_taken_becomes_the_record() {
        hood(HOOD_600);
        Trial redesign = new Trial("A redesign", List.of(change(MAKE_UP, 0.26901)));
        Trial keep = new Trial("B keep 400", List.of(change(HOOD, HOOD_400)));
        Reach tried = AsPortal.call(() -> trials.trial(house, redesign));
        assertThat(pressure(tried)).isBetween(3.5, 4.3);
        assertThat(AsPortal.call(() -> trials.trial(house, keep)).askedNow()).isEmpty();
        assertThat(AsPortal.call(() -> record.valuesOf(house))).containsEntry(HOOD, "0.28317");
        assertThatThrownBy(() -> AsPortal.run(() ->
                        trials.take(house, new Trials.Taking(redesign.changes(), "other", "000 000", null, null))))
                .satisfies(code("not-what-stands"));
        AsPortal.run(() ->
                trials.take(house, new Trials.Taking(redesign.changes(), "redesigned", tried.copyCode(), null, null)));
        assertThat(AsPortal.call(() -> record.valuesOf(house))).containsEntry(MAKE_UP, "0.26901");
        assertThat(AsPortal.call(() -> proofs.list(house)).get(0).issue()).isEqualTo(2);
        assertThat(AsPortal.call(() -> proofs.list(house)).get(0).reason()).isEqualTo("redesigned");
    }

    private static double pressure(Reach reach) {
        return Double.parseDouble(reach.chain().get(0).outputs().stream()
                .filter(output -> output.name().equals("housePressurePa"))
                .findFirst()
                .orElseThrow()
                .present());
    }

    @Test
    void the_comparison_has_a_column_for_nothing_else_and_one_for_each_trial() throws Exception {
        hood(HOOD_600);
        http.perform(post("/api/v1/houses/{h}/trials/comparison", house)
                        .with(SignedIn.as(Role.DESIGNER))
                        .contentType(APPLICATION_JSON)
                        .content("{\"trials\": [{\"title\": \"A\", \"changes\": [{\"path\": \"" + MAKE_UP
                                + "\", \"value\": 0.26901}]}, {\"title\": \"B\", \"changes\": [{\"path\": \"" + HOOD
                                + "\", \"value\": 0.18878}]}]}"))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.trials.length()").value(2))
                .andExpect(jsonPath("$.rows[?(@.name=='housePressurePa')].cells[0].verdict")
                        .value("FAILS"))
                .andExpect(jsonPath("$.rows[?(@.name=='housePressurePa')].cells[2].verdict")
                        .value("PASSES"));
        http.perform(post("/api/v1/houses/{h}/trials", house)
                        .with(SignedIn.as(Role.DESIGNER))
                        .contentType(APPLICATION_JSON)
                        .content("{\"title\": \"\", \"changes\": [{\"path\": \"air.exhaust[dryer].ratedFlowM3PerS\","
                                + " \"value\": 1}]}"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.code").value("unknown-path"));
        http.perform(post("/api/v1/houses/{h}/trials", house)
                        .with(SignedIn.as(Role.DESIGNER))
                        .contentType(APPLICATION_JSON)
                        .content("{\"title\": \"\", \"changes\": [{\"path\": \"" + HOOD + "\", \"value\": 99}]}"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.code").value("outside-limits"));
    }

    @Test
    void a_decision_is_written_from_the_version_that_was_read() throws Exception {
        String body = "{\"title\": \"Filter\"}";
        http.perform(put("/api/v1/houses/{h}/decisions/D31", house)
                        .with(SignedIn.as(Role.DESIGNER))
                        .header("If-Match", "\"0\"")
                        .contentType(APPLICATION_JSON)
                        .content(body))
                .andExpect(status().isBadRequest());
        http.perform(put("/api/v1/houses/{h}/decisions/D31/orders/unit", house)
                        .with(SignedIn.as(Role.OFFICE_MANAGER))
                        .contentType(APPLICATION_JSON)
                        .content("{\"state\": \"HELD\", \"note\": \"price kept until 29 May\"}"))
                .andExpect(status().isPreconditionRequired());
        http.perform(put("/api/v1/houses/{h}/decisions/D31/orders/unit", house)
                        .with(SignedIn.as(Role.OFFICE_MANAGER))
                        .header("If-Match", "\"0\"")
                        .contentType(APPLICATION_JSON)
                        .content("{\"state\": \"BOUGHT\", \"note\": \"paid\"}"))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.approvals[0].alreadyBought").value(true))
                .andExpect(jsonPath("$.approvals[0].state").value("STANDS"));
        http.perform(put("/api/v1/houses/{h}/decisions/D31/orders/unit", house)
                        .with(SignedIn.as(Role.OFFICE_MANAGER))
                        .header("If-Match", "\"0\"")
                        .contentType(APPLICATION_JSON)
                        .content("{\"state\": \"HELD\", \"note\": \"\"}"))
                .andExpect(status().isPreconditionFailed());
    }

    @Test
    void the_history_tells_who_when_and_why_and_which_change_is_open() throws Exception {
        hood(HOOD_600);
        http.perform(get("/api/v1/houses/{h}/changes?limit=2", house).with(SignedIn.as(Role.OWNER, house)))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.items[0].kind").value("PART"))
                .andExpect(jsonPath("$.items[0].open").value(true))
                .andExpect(jsonPath("$.items[0].values[0].new").value("0.28317"))
                .andExpect(jsonPath("$.items[1].kind").value("APPROVAL"))
                .andExpect(jsonPath("$.next").exists());
    }

    @Test
    void the_decisions_of_others_do_not_exist() throws Exception {
        String other = HouseFixtures.house(houses);
        for (String path : List.of("/decisions", "/decisions/D31", "/reach", "/changes")) {
            http.perform(get("/api/v1/houses/" + house + path).with(SignedIn.as(Role.CONSULTANT, other)))
                    .andExpect(status().isNotFound());
        }
        http.perform(post("/api/v1/houses/{h}/decisions/D31/comments", house)
                        .with(SignedIn.as(Role.OWNER, house))
                        .contentType(APPLICATION_JSON)
                        .content("{\"text\": \"A deeper hood is fine.\"}"))
                .andExpect(status().isCreated())
                .andExpect(jsonPath("$.comments[0].person").value("owner"));
        http.perform(post("/api/v1/houses/{h}/decisions", house)
                        .with(SignedIn.as(Role.OWNER, house))
                        .contentType(APPLICATION_JSON)
                        .content("{\"code\": \"D01\"}"))
                .andExpect(status().isForbidden());
    }

    @Test
    void the_table_has_every_usual_decision_and_only_arrows_between_them() {
        assertThat(DecisionTable.KINDS).hasSize(48);
        assertThat(DecisionTable.ARROWS).allSatisfy(arrow -> {
            assertThat(DecisionTable.kind(arrow.to())).as(arrow.to()).isPresent();
            assertThat(arrow.from().startsWith("house.")
                            || DecisionTable.kind(arrow.from()).isPresent())
                    .as(arrow.from())
                    .isTrue();
            assertThat(arrow.because()).isNotBlank();
        });
    }
}
