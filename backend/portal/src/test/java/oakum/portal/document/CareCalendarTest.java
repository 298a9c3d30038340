package oakum.portal.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import biweekly.Biweekly;
import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import biweekly.util.DateTimeComponents;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import oakum.portal.PortalTest;
import oakum.portal.SignedIn;
import oakum.portal.aftercare.Care;
import oakum.portal.aftercare.Filters;
import oakum.portal.aftercare.NewFilter;
import oakum.portal.houserecord.HouseFixtures;
import oakum.portal.houserecord.Houses;
import oakum.portal.people.AsPortal;
import oakum.portal.people.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import tools.jackson.databind.json.JsonMapper;

@PortalTest
class CareCalendarTest {
    @Autowired
    MockMvc http;

    @Autowired
    Houses houses;

    @Autowired
    Care care;

    @Autowired
    Filters filters;

    @Autowired
    Clock clock;

    private String house;
    private LocalDate handover;

    @BeforeEach
    void two_houses_in_care() {
        handover = LocalDate.now(clock).minusMonths(20);
        house = inCare();
        inCare();
    }

    private String inCare() {
        String made = HouseFixtures.house(houses);
        AsPortal.run(() -> {
            care.place(new Care.Place("around " + made, DayOfWeek.TUESDAY));
            care.take(new Care.HouseInCare(made, "around " + made, handover));
            filters.add(
                    made,
                    new NewFilter(
                            "return",
                            "attic",
                            "20×25×5",
                            1,
                            "MERV 13",
                            null,
                            LocalDate.now(clock).minusDays(10),
                            13.9,
                            5.5,
                            13.9,
                            5.5,
                            0.236,
                            0.1085,
                            null,
                            null,
                            null));
        });
        return made;
    }

    @Test
    void an_owner_subscribes_to_the_own_house_and_nothing_else() throws Exception {
        String path = address();
        String feed = feed(path);
        ICalendar calendar = Biweekly.parse(feed).first();
        assertThat(calendar.validate(ICalVersion.V2_0).isEmpty()).as(feed).isTrue();
        List<VEvent> events = calendar.getEvents();
        assertThat(events).hasSize(4).allMatch(e -> e.getSummary().getValue().startsWith(house + ": "));
        assertThat(events.stream().map(e -> e.getUid().getValue()))
                .doesNotHaveDuplicates()
                .contains("filter." + house + ".return@oakum");
        VEvent last = events.stream()
                .filter(e -> e.getSummary().getValue().contains("24 months"))
                .findFirst()
                .orElseThrow();
        LocalDate due = handover.plusMonths(24);
        assertThat(last.getDateStart().getValue().hasTime()).isFalse();
        assertThat(day(last.getDateStart().getValue().getRawComponents())).isEqualTo(due);
        assertThat(day(last.getDateEnd().getValue().getRawComponents())).isEqualTo(due.plusDays(1));
    }

    @Test
    void an_unchanged_calendar_is_not_sent_again() throws Exception {
        String path = address();
        String tag = http.perform(get(path)).andReturn().getResponse().getHeader("ETag");
        http.perform(get(path).header("If-None-Match", tag)).andExpect(status().isNotModified());
    }

    @Test
    void a_new_address_ends_the_old_one_and_a_guess_finds_nothing() throws Exception {
        String before = address();
        String now = address();
        assertThat(now).isNotEqualTo(before);
        http.perform(get(before)).andExpect(status().isNotFound());
        http.perform(get("/api/v1/calendars/guess/care.ics")).andExpect(status().isNotFound());
        http.perform(get(now))
                .andExpect(status().isOk())
                .andExpect(header().string("Content-Type", "text/calendar;charset=UTF-8"));
    }

    private String address() throws Exception {
        return JsonMapper.shared()
                .readTree(http.perform(post("/api/v1/calendars").with(SignedIn.as(Role.OWNER, house)))
                        .andExpect(status().isCreated())
                        .andReturn()
                        .getResponse()
                        .getContentAsString())
                .get("path")
                .asString();
    }

    private String feed(String path) throws Exception {
        return http.perform(get(path))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString(StandardCharsets.UTF_8);
    }

    private static LocalDate day(DateTimeComponents parts) {
        return LocalDate.of(parts.getYear(), parts.getMonth(), parts.getDate());
    }
}
