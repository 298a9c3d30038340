package oakum.portal.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.http.MediaType.APPLICATION_JSON;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.put;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import oakum.portal.PortalTest;
import oakum.portal.SignedIn;
import oakum.portal.aftercare.Care;
import oakum.portal.aftercare.Filters;
import oakum.portal.aftercare.NewFilter;
import oakum.portal.decision.DecisionContent;
import oakum.portal.decision.DecisionView;
import oakum.portal.decision.Decisions;
import oakum.portal.decision.OrderLine;
import oakum.portal.houserecord.HouseFixtures;
import oakum.portal.houserecord.HouseRecord;
import oakum.portal.houserecord.Houses;
import oakum.portal.houserecord.PartKind;
import oakum.portal.houserecord.Proofs;
import oakum.portal.people.Accounts;
import oakum.portal.people.AsPortal;
import oakum.portal.people.Role;
import oakum.portal.site.CoverCheckShown;
import oakum.portal.site.CoverChecks;
import oakum.portal.site.LooseEnds;
import oakum.portal.site.NewClock;
import oakum.portal.site.NewLooseEnd;
import oakum.portal.site.RowAnswer;
import oakum.portal.site.RowAnswerSent;
import oakum.portal.site.RunningClocks;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** One house with make-up air approved, and another that nobody of the first one holds a role for. */
@PortalTest
class StartPagesTest {
    private static final double HOOD_400 = 0.18878;
    private static final double HOOD_600 = 0.28317;

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
    CoverChecks checks;

    @Autowired
    RunningClocks clocks;

    @Autowired
    LooseEnds looseEnds;

    @Autowired
    Care care;

    @Autowired
    Filters filters;

    @Autowired
    Accounts accounts;

    @Autowired
    Clock clock;

    private String house;
    private String strange;
    private LocalDate today;

    @BeforeEach
    void two_houses() {
        house = HouseFixtures.house(houses);
        strange = HouseFixtures.house(houses);
        today = LocalDate.now(clock.withZone(ZoneId.of("America/Denver")));
        AsPortal.run(() -> {
            for (String one : List.of(house, strange)) {
                record.save(one, PartKind.AIR, HouseFixtures.air(HOOD_400), "400 cfm");
                proofs.make(
                        one,
                        "housePressure",
                        "House pressure, worst case",
                        "house-pressure",
                        HouseFixtures.housePressure(),
                        "first");
                open(one, "D31", List.of(Role.PRINCIPAL, Role.MECHANICAL_CONTRACTOR), List.of("housePressure"));
            }
        });
        approve(Role.PRINCIPAL);
    }

    @Test
    void the_principal_sees_a_lapsed_approval_with_old_and_new_pressure_and_the_order_behind_it() throws Exception {
        assertThat(section(start(Role.PRINCIPAL, house), "Lapsed approvals")).isEmpty();
        growTheHood();

        JsonNode page = start(Role.PRINCIPAL, house);
        JsonNode lapsed = section(page, "Lapsed approvals").get(0);

        // 2.1 and 83.5 Pa are the invented scenario's; the fixture's make-up unit is not tempered to the same airflow
        assertThat(text(lapsed, "sentence"))
                .contains("went from 400 to 600 cfm")
                .containsPattern("limit 5 Pa");
        assertThat(text(lapsed, "href")).isEqualTo("/houses/" + house + "/decisions/D31");
        assertThat(lapsed.get("tags").toString()).contains("safety list", "ordered");
        assertThat(text(lapsed, "note")).contains("Make-up unit").contains("principal");
        assertThat(text(page, "finding")).contains("lapsed");
    }

    @Test
    void the_same_numbers_are_told_in_si_to_who_reads_si() throws Exception {
        growTheHood();
        units("SI");
        try {
            JsonNode lapsed =
                    section(start(Role.PRINCIPAL, house), "Lapsed approvals").get(0);
            assertThat(text(lapsed, "sentence")).contains("went from 679.6 to 1019.4 m³/h");
        } finally {
            units("IP");
        }
    }

    @Test
    void the_principal_and_the_site_lead_see_what_must_not_be_covered_and_why() throws Exception {
        wetCorner();
        for (Role role : List.of(Role.PRINCIPAL, Role.SITE_LEAD)) {
            String title = role == Role.PRINCIPAL ? "Cover checks for your name" : "Do not cover";
            JsonNode stop = section(start(role, house), title).get(0);
            assertThat(text(stop, "word")).isEqualTo("Do not cover");
            assertThat(text(stop, "sentence"))
                    .contains("19.4 %")
                    .contains("18.0 %")
                    .doesNotContain("nobody");
            assertThat(text(stop, "href")).isEqualTo("/houses/" + house + "/cover-checks/C9");
        }
    }

    @Test
    void the_designer_sees_what_changed_what_is_open_and_what_the_record_lacks() throws Exception {
        AsPortal.run(() -> open(house, "D29", List.of(Role.PRINCIPAL), List.of()));
        growTheHood();
        JsonNode page = start(Role.DESIGNER, house);

        assertThat(titles(page))
                .containsExactly(
                        "What changed",
                        "Open decisions",
                        "Gaps in the record",
                        "Answers from site and others",
                        "Orders that wait for a decision");
        assertThat(section(page, "What changed").toString()).contains("went from 400 to 600 cfm");
        assertThat(text(section(page, "Open decisions").get(0), "sentence"))
                .isEqualTo("No proof is behind it. Waits for principal.");
        assertThat(section(page, "Gaps in the record").toString())
                .contains("Enclosure")
                .doesNotContain("\"Air\"");
        assertThat(section(page, "Orders that wait for a decision").toString()).contains("Its approval has lapsed");
    }

    @Test
    void the_site_lead_sees_clocks_and_loose_ends() throws Exception {
        AsPortal.run(() -> {
            clocks.start(
                    house,
                    new NewClock(
                            "south",
                            "Outer membrane, south face",
                            today.minusDays(59),
                            90,
                            "data sheet",
                            today.plusDays(25)));
            looseEnds.open(house, new NewLooseEnd("Tape the sill", "Rain gets in.", Role.SITE_LEAD, today, false));
        });
        JsonNode page = start(Role.SITE_LEAD, house);
        assertThat(text(section(page, "Running clocks").get(0), "word")).isEqualTo("6 days to spare");
        assertThat(text(page, "finding")).isEqualTo("Outer membrane, south face: 6 days to spare.");
        assertThat(text(section(page, "Loose ends on you").get(0), "word")).isEqualTo("By today");
    }

    @Test
    void the_mechanical_contractor_sees_which_numbers_may_be_built() throws Exception {
        JsonNode page = start(Role.MECHANICAL_CONTRACTOR, house);
        assertThat(text(page, "finding")).isEqualTo("One decision waits for your approval.");
        approve(Role.MECHANICAL_CONTRACTOR);
        assertThat(numbers()).contains("Approved: 380 cfm, duct 7.87 in., heater 9000 W, circuit 50 A.");
        growTheHood();
        assertThat(numbers()).contains("Do not build yet: 380 cfm, duct 7.87 in., heater 9000 W, circuit 50 A.");
        assertThat(section(start(Role.MECHANICAL_CONTRACTOR, house), "What changed since you quoted")
                        .toString())
                .contains("went from 400 to 600 cfm");
    }

    @Test
    void the_office_manager_sees_rounds_stock_and_owners_who_wait() throws Exception {
        followAFilter();
        SignedIn.call(accounts, Role.OWNER, () -> decisions.say(house, "D31", "Will it be loud?"), house);
        JsonNode page = start(Role.OFFICE_MANAGER);
        assertThat(titles(page))
                .containsExactly(
                        "Rounds to book",
                        "Stock",
                        "Owners waiting for an answer",
                        "Warranty visits",
                        "Alerts and loose ends for the office");
        assertThat(section(page, "Rounds to book").toString()).contains(house + ", 1 × 16×25×4");
        assertThat(text(
                        section(start(Role.OFFICE_MANAGER, house), "Owners waiting for an answer")
                                .get(0),
                        "sentence"))
                .isEqualTo("“Will it be loud?”");

        SignedIn.call(accounts, Role.DESIGNER, () -> decisions.say(house, "D31", "No: below 25 dB(A)."));
        assertThat(section(start(Role.OFFICE_MANAGER, house), "Owners waiting for an answer"))
                .isEmpty();
    }

    @Test
    void the_owner_reads_plain_words_about_the_own_house() throws Exception {
        JsonNode quiet = start(Role.OWNER, house);
        assertThat(text(quiet, "finding")).isEqualTo("We know of nothing wrong in Saddle Spruce.");
        assertThat(section(quiet, "Is there anything you should do?")).isEmpty();

        followAFilter();
        AsPortal.run(() -> open(house, "D30", List.of(Role.OWNER), List.of()));
        JsonNode page = start(Role.OWNER, house);
        assertThat(titles(page))
                .containsExactly(
                        "Is the house all right?",
                        "Is there anything you should do?",
                        "Next visit",
                        "How do I …",
                        "Is something not right?");
        assertThat(text(section(page, "Is the house all right?").get(0), "sentence"))
                .contains("about 70 % of the dust");
        assertThat(section(page, "Is there anything you should do?")).hasSize(1);
        assertThat(section(page, "Next visit")).isNotEmpty();
        assertThat(text(page, "finding")).contains("One thing waits for your word");
    }

    @Test
    void the_consultant_sees_shared_houses_revisions_and_what_is_asked() throws Exception {
        AsPortal.run(() -> open(house, "D39", List.of(Role.CONSULTANT), List.of()));
        growTheHood();
        JsonNode page = start(Role.CONSULTANT, house);
        assertThat(text(page, "finding")).startsWith("One house is shared with you. One thing is asked of you.");
        assertThat(section(page, "Inputs").toString()).contains("Revision 2", "hood of 600");
        assertThat(section(page, "What changed").toString()).contains("went from 400 to 600 cfm");
        assertThat(section(page, "Where to post a result").toString()).contains("/api/v1/houses/" + house + "/proofs");
    }

    @ParameterizedTest
    @EnumSource(Role.class)
    void nobody_sees_a_house_that_is_not_theirs(Role role) throws Exception {
        AsPortal.run(
                () -> looseEnds.open(strange, new NewLooseEnd("Not yours", "It is elsewhere.", role, today, false)));
        String page = start(role, house).toString();
        assertThat(page).contains("\"" + role.name() + "\"").doesNotContain("\"" + strange + "\"", "Not yours");
        http.perform(get("/api/v1/houses/{h}/views/house", strange).with(SignedIn.as(role, house)))
                .andExpect(status().isNotFound());
        http.perform(get("/api/v1/houses/{h}/views/house", house).with(SignedIn.as(role, house)))
                .andExpect(status().isOk());
    }

    @Test
    void a_role_that_one_does_not_hold_is_refused_and_nobody_sees_anything_signed_out() throws Exception {
        http.perform(get("/api/v1/views/start").param("role", "PRINCIPAL").with(SignedIn.as(Role.DESIGNER)))
                .andExpect(status().isForbidden());
        http.perform(get("/api/v1/views/start")).andExpect(status().isUnauthorized());
    }

    @Test
    void who_holds_a_role_for_no_house_yet_is_told_so() throws Exception {
        assertThat(text(start(Role.OWNER), "finding")).isEqualTo("Nothing is shared with you yet.");
    }

    @Test
    void the_house_page_tells_the_worst_first_and_marks_it_on_the_section() throws Exception {
        wetCorner();
        JsonNode sheet = json("/api/v1/houses/" + house + "/views/house", Role.SITE_LEAD);
        assertThat(text(sheet, "finding")).startsWith("Insulation and inner layer must not be covered");
        assertThat(text(sheet.get("marks").get(0), "on")).isEqualTo("wall");
        assertThat(text(sheet.get("marks").get(0), "sentence")).contains("19.4 %");
    }

    private void open(String one, String code, List<Role> approvers, List<String> keys) {
        DecisionView usual = decisions.open(one, code, null);
        boolean makeUp = code.equals("D31");
        decisions.write(
                one,
                code,
                new DecisionContent(
                        usual.title(),
                        usual.question(),
                        usual.group(),
                        null,
                        List.of(),
                        "",
                        keys,
                        approvers,
                        usual.outsideApprovers(),
                        usual.safetyList(),
                        makeUp ? List.of("air.makeUp[makeUpUnit].flowM3PerS") : List.of(),
                        makeUp
                                ? List.of(new OrderLine("unit", "Make-up unit, 7 kW", OrderLine.State.ORDERED, ""))
                                : List.of(),
                        null));
    }

    private void approve(Role role) {
        SignedIn.call(
                accounts,
                role,
                () -> decisions.approve(
                        house, "D31", decisions.find(house, "D31").copyCode(), role));
    }

    private void growTheHood() {
        AsPortal.run(() -> record.save(house, PartKind.AIR, HouseFixtures.air(HOOD_600), "hood of 600 cfm"));
    }

    private void wetCorner() {
        AsPortal.run(() -> {
            CoverCheckShown check = checks.make(house, "C9");
            String corner = check.rows().stream()
                    .filter(row -> row.number() != null)
                    .findFirst()
                    .orElseThrow()
                    .id();
            checks.answer(
                    house,
                    "C9",
                    corner,
                    new RowAnswerSent(
                            UUID.randomUUID(), RowAnswer.RIGHT, 0.194, null, List.of(), clock.instant(), null, null));
        });
    }

    private void followAFilter() {
        AsPortal.run(() -> {
            care.place(new Care.Place("coast of " + house, DayOfWeek.WEDNESDAY));
            care.take(new Care.HouseInCare(house, "coast of " + house, today.minusMonths(20)));
            LocalDate fitted = today.minusWeeks(20);
            filters.add(
                    house,
                    new NewFilter(
                            "return",
                            "mechanical room",
                            "16×25×4",
                            1,
                            "MERV 13",
                            "A3",
                            fitted,
                            21.4,
                            7.7,
                            21.4,
                            7.8,
                            0.2124,
                            0.0944,
                            63.0,
                            null,
                            null));
            for (int week = 1; week <= 20; week++) {
                filters.sample(house, "return", fitted.plusWeeks(week), 1 + 0.035 * week);
            }
        });
    }

    private String numbers() throws Exception {
        StringBuilder numbers = new StringBuilder();
        section(start(Role.MECHANICAL_CONTRACTOR, house), "The numbers to build to")
                .forEach(m -> numbers.append(text(m, "word") + ": " + text(m, "sentence") + "\n"));
        return numbers.toString();
    }

    private void units(String units) throws Exception {
        http.perform(put("/api/v1/me/units")
                        .with(SignedIn.as(Role.PRINCIPAL, house))
                        .contentType(APPLICATION_JSON)
                        .content("{\"units\":\"" + units + "\"}"))
                .andExpect(status().isOk());
    }

    private JsonNode start(Role role, String... of) throws Exception {
        return json("/api/v1/views/start", role, of);
    }

    private JsonNode json(String path, Role role, String... of) throws Exception {
        return JsonMapper.shared()
                .readTree(http.perform(get(path).with(SignedIn.as(role, of)))
                        .andExpect(status().isOk())
                        .andReturn()
                        .getResponse()
                        .getContentAsString(StandardCharsets.UTF_8)
                        .replace('\u00a0', ' '));
    }

    private static List<String> titles(JsonNode page) {
        List<String> titles = new ArrayList<>();
        page.get("sections").forEach(section -> titles.add(text(section, "title")));
        return titles;
    }

    private static JsonNode section(JsonNode page, String title) {
        for (JsonNode section : page.get("sections")) {
            if (text(section, "title").equals(title)) {
                return section.get("matters");
            }
        }
        throw new AssertionError("no section " + title + " in " + titles(page));
    }

    private static String text(JsonNode node, String name) {
        return node.get(name).asString();
    }
}
