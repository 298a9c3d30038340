package oakum.portal.houserecord;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static org.springframework.http.MediaType.APPLICATION_JSON;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Verdict;
import oakum.physics.catalogue.Catalogue;
import oakum.portal.PortalTest;
import oakum.portal.SignedIn;
import oakum.portal.houserecord.standing.Binding;
import oakum.portal.houserecord.standing.ProofState;
import oakum.portal.houserecord.standing.Standing;
import oakum.portal.http.Problem;
import oakum.portal.people.Accounts;
import oakum.portal.people.AsPortal;
import oakum.portal.people.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@PortalTest
class ProofTest {
    @Autowired
    MockMvc http;

    @Autowired
    Houses houses;

    @Autowired
    HouseRecord record;

    @Autowired
    Proofs proofs;

    @Autowired
    Baselines baselines;

    @Autowired
    Accounts accounts;

    String house;

    @BeforeEach
    void a_house_with_a_hood_of_400_cfm() {
        house = HouseFixtures.house(houses);
        hood(0.18878);
    }

    private void hood(double flowM3PerS) {
        AsPortal.run(() -> record.save(house, PartKind.AIR, HouseFixtures.air(flowM3PerS), "hood " + flowM3PerS));
    }

    private ProofView housePressure() {
        return AsPortal.call(() -> proofs.make(
                house,
                "housePressure",
                "House pressure, worst case",
                "house-pressure",
                HouseFixtures.housePressure(),
                "first"));
    }

    private ProofView air() {
        return AsPortal.call(() -> proofs.make(
                house,
                "placeAir",
                "Air of the place",
                "standard-atmosphere",
                List.of(Binding.of("altitudeM", "house.altitudeM")),
                "first"));
    }

    private ProofState state(String key) {
        return AsPortal.call(() -> proofs.list(house)).stream()
                .filter(p -> p.key().equals(key))
                .findFirst()
                .orElseThrow()
                .state();
    }

    @Test
    void a_proof_keeps_every_value_it_relied_on_and_the_printed_result() {
        ProofView proof = housePressure();
        assertThat(proof.issue()).isEqualTo(1);
        assertThat(proof.state()).isEqualTo(ProofState.CURRENT);
        assertThat(proof.relied())
                .extracting("path", "value")
                .contains(
                        tuple("air.exhaust[rangeHood].ratedFlowM3PerS", "0.18878"),
                        tuple("house.altitudeM", "2350"),
                        tuple("air.makeUp[makeUpUnit].flowM3PerS", "0.17934"));
        ProofOutput pressure = proof.outputs().stream()
                .filter(o -> o.name().equals("housePressurePa"))
                .findFirst()
                .orElseThrow();
        // 20 cfm net of 158 cfm at 50 Pa with exponent 0.65: 50·(20/158)^(1/0.65) = 2.1 Pa
        assertThat(Double.parseDouble(pressure.value())).isBetween(1.9, 2.3);
        assertThat(pressure.limit()).isEqualTo("5");
        assertThat(pressure.verdict()).isEqualTo(Verdict.PASSES);
    }

    @Test
    void a_bigger_hood_makes_it_tell_old_and_new_and_back_is_current_again() {
        housePressure();
        hood(0.28317);
        ProofView proof = AsPortal.call(() -> proofs.list(house)).get(0);
        assertThat(proof.state()).isEqualTo(ProofState.INPUTS_CHANGED);
        assertThat(proof.differences())
                .extracting("path", "label", "old", "present")
                .containsExactly(tuple(
                        "air.exhaust[rangeHood].ratedFlowM3PerS", "Range hood: Rated flow", "0.18878", "0.28317"));
        hood(0.18878);
        assertThat(state("housePressure")).isEqualTo(ProofState.CURRENT);
    }

    @Test
    void recomputing_keeps_the_issue_before() throws Exception {
        housePressure();
        http.perform(post("/api/v1/houses/{h}/proofs/housePressure/recomputations", house)
                        .with(SignedIn.as(Role.DESIGNER))
                        .contentType(APPLICATION_JSON)
                        .content("{\"reason\": \"nothing changed\"}"))
                .andExpect(status().isConflict())
                .andExpect(jsonPath("$.code").value("proof-current"));
        hood(0.28317);
        http.perform(post("/api/v1/houses/{h}/proofs/housePressure/recomputations", house)
                        .with(SignedIn.as(Role.DESIGNER))
                        .contentType(APPLICATION_JSON)
                        .content("{\"reason\": \"the owner chose a larger cooktop\"}"))
                .andExpect(status().isCreated())
                .andExpect(jsonPath("$.issue").value(2))
                .andExpect(jsonPath("$.state").value("CURRENT"));
        http.perform(get("/api/v1/houses/{h}/proofs/housePressure", house).with(SignedIn.as(Role.OWNER, house)))
                .andExpect(jsonPath("$.issues.length()").value(2))
                .andExpect(jsonPath("$.issues[1].reason").value("first"));
    }

    @Test
    void a_proof_below_waits_and_is_recomputed_together_with_what_is_above_it() {
        air();
        AsPortal.run(() -> proofs.make(
                house,
                "roomAir",
                "Room air",
                "moist-air-state",
                HouseFixtures.roomAir("results.placeAir.standardPressurePa"),
                "first"));
        AsPortal.run(() -> record.save(house, PartKind.HOUSE, HouseFixtures.measuresAt(2400), "surveyed"));
        assertThat(state("placeAir")).isEqualTo(ProofState.INPUTS_CHANGED);
        assertThat(state("roomAir")).isEqualTo(ProofState.WAITING);
        AsPortal.run(() -> proofs.recompute(house, "roomAir", "surveyed"));
        assertThat(state("placeAir")).isEqualTo(ProofState.CURRENT);
        assertThat(state("roomAir")).isEqualTo(ProofState.CURRENT);
    }

    @Test
    void what_does_not_exist_and_what_would_rest_on_itself_is_refused() {
        air();
        assertThatThrownBy(() -> make("other", Binding.of("altitudeM", "house.height")))
                .satisfies(code("unknown-path"));
        assertThatThrownBy(() -> make("other", Binding.of("altitudeM", "results.nobody.standardPressurePa")))
                .satisfies(code("unknown-path"));
        assertThatThrownBy(() -> make("other", Binding.of("height", "house.altitudeM")))
                .satisfies(code("unknown-input"));
        assertThatThrownBy(() -> make("placeAir", Binding.of("altitudeM", "results.placeAir.standardPressurePa")))
                .satisfies(code("proof-loop"));
        assertThatThrownBy(() -> make("other", Binding.typed("altitudeM", "99000", "typed")))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> make("other")).isInstanceOf(Refused.class);
    }

    private void make(String key, Binding... bindings) {
        AsPortal.run(() -> proofs.make(house, key, "Air", "standard-atmosphere", List.of(bindings), "try"));
    }

    private static Consumer<Throwable> code(String code) {
        return e -> assertThat(((Problem) e).code()).isEqualTo(code);
    }

    @Test
    void a_consultant_submits_evidence_on_exactly_what_he_saw() throws Exception {
        String body = """
                {"kind": "SUBMITTED", "key": "secondOpinion", "title": "Second opinion", "reason": "asked for",
                 "bindings": [{"input": "hood", "path": "air.exhaust[rangeHood].ratedFlowM3PerS", "value": 0.18878}],
                 "submission": {"method": "by hand, with the density of this altitude", "text": "see the sheet",
                   "results": [{"name": "housePressurePa", "label": "House pressure", "unit": "HOUSE_PASCAL",
                                "value": 2.2, "limit": 5}]}}
                """;
        http.perform(post("/api/v1/houses/{h}/proofs", house)
                        .with(SignedIn.as(Role.CONSULTANT, house))
                        .contentType(APPLICATION_JSON)
                        .content(body))
                .andExpect(status().isCreated())
                .andExpect(jsonPath("$.submission.signedAs").value("consultant"))
                .andExpect(jsonPath("$.outputs[0].verdict").value("PASSES"));
        hood(0.28317);
        http.perform(post("/api/v1/houses/{h}/proofs", house)
                        .with(SignedIn.as(Role.CONSULTANT, house))
                        .contentType(APPLICATION_JSON)
                        .content(body))
                .andExpect(status().isConflict())
                .andExpect(jsonPath("$.code").value("not-what-stands"));
        assertThat(state("secondOpinion")).isEqualTo(ProofState.INPUTS_CHANGED);
    }

    @Test
    void who_may_not_see_the_house_finds_no_proof_and_who_may_not_prove_is_refused() throws Exception {
        housePressure();
        String other = HouseFixtures.house(houses);
        for (Role role : new Role[] {Role.OWNER, Role.CONSULTANT}) {
            http.perform(get("/api/v1/houses/{h}/proofs", house).with(SignedIn.as(role, other)))
                    .andExpect(status().isNotFound());
            http.perform(get("/api/v1/houses/{h}/standing", house).with(SignedIn.as(role, other)))
                    .andExpect(status().isNotFound());
        }
        http.perform(post("/api/v1/houses/{h}/proofs/housePressure/recomputations", house)
                        .with(SignedIn.as(Role.SITE_LEAD))
                        .contentType(APPLICATION_JSON)
                        .content("{\"reason\": \"try\"}"))
                .andExpect(status().isForbidden());
    }

    @Test
    void a_failure_in_the_middle_leaves_nothing_behind() {
        housePressure();
        air();
        Snapshot before = AsPortal.call(() -> record.snapshot(house));
        Tried tried = new Tried(before.values(), Map.of(PartKind.AIR, HouseFixtures.air(0.28317)));
        Map<String, Standing.Result> results = new LinkedHashMap<>(
                new Standing(before.issues(), Catalogue::find).recomputed(Snapshot.values(withHood(before, 0.28317))));
        results.put("placeAir", null);
        assertThatThrownBy(() -> AsPortal.run(() -> record.keep(house, tried, results, "breaks half way")))
                .isInstanceOf(NullPointerException.class);
        Snapshot after = AsPortal.call(() -> record.snapshot(house));
        assertThat(after.parts().revision(PartKind.AIR))
                .isEqualTo(before.parts().revision(PartKind.AIR));
        assertThat(after.proofs()).isEqualTo(before.proofs());
    }

    @Test
    void a_baseline_remembers_the_record_and_is_compared_with_today() {
        housePressure();
        AsPortal.run(() -> baselines.keep(house, "as permitted", "permit set"));
        hood(0.28317);
        assertThat(AsPortal.call(() -> baselines.differences(house, "as permitted", null)))
                .extracting("path")
                .containsExactly("air.exhaust[rangeHood].ratedFlowM3PerS");
        assertThatThrownBy(() -> AsPortal.run(() -> baselines.keep(house, "as permitted", "again")))
                .satisfies(code("baseline-exists"));
    }

    @Test
    void two_people_who_change_one_house_come_one_after_another() throws Exception {
        int people = 6;
        List<Thread> threads = new ArrayList<>();
        for (int i = 0; i < people; i++) {
            double flow = 0.2 + i / 100.0;
            threads.add(new Thread(() -> hood(flow)));
        }
        int before = AsPortal.call(() -> record.parts(house)).revision(PartKind.AIR);
        threads.forEach(Thread::start);
        for (Thread thread : threads) {
            thread.join();
        }
        assertThat(AsPortal.call(() -> record.parts(house)).revision(PartKind.AIR))
                .isEqualTo(before + people);
    }

    private static Parts withHood(Snapshot snapshot, double flowM3PerS) {
        Parts p = snapshot.parts();
        return new Parts(
                p.house(),
                p.enclosure(),
                HouseFixtures.air(flowM3PerS),
                p.heat(),
                p.moisture(),
                p.water(),
                p.sensors(),
                p.revisions());
    }
}
