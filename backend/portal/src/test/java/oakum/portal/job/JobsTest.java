package oakum.portal.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.awaitility.Awaitility.await;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.asyncDispatch;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import oakum.portal.PortalTest;
import oakum.portal.SignedIn;
import oakum.portal.houserecord.HouseFixtures;
import oakum.portal.houserecord.Houses;
import oakum.portal.http.Problem;
import oakum.portal.people.AsPortal;
import oakum.portal.people.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.MvcResult;

@PortalTest
class JobsTest {
    @Autowired
    Jobs jobs;

    @Autowired
    Houses houses;

    @Autowired
    MockMvc http;

    @Autowired
    JdbcClient jdbc;

    private String house;

    @BeforeEach
    void a_house() {
        house = HouseFixtures.house(houses);
    }

    @Test
    void work_that_was_asked_for_is_done_and_its_result_kept() {
        Job asked = ask("3");
        assertThat(asked.state()).isEqualTo(JobState.WAITING);

        Job done = ended(asked);

        assertThat(done.state()).isEqualTo(JobState.DONE);
        assertThat(done.doneFraction()).isEqualTo(1);
        assertThat(AsPortal.call(() -> jobs.result(house, asked.id()))).isEqualTo("{\"counted\":3}");
    }

    @Test
    void it_tells_how_far_it_is_and_stops_when_it_is_cancelled() throws Exception {
        Job asked = ask("10000");
        await().atMost(Duration.ofSeconds(10)).until(() -> now(asked).doneFraction() > 0);
        assertThat(now(asked).actions()).containsExactly("cancel");

        http.perform(post("/api/v1/houses/{h}/jobs/{j}/cancellation", house, asked.id())
                        .with(SignedIn.as(Role.DESIGNER, house)))
                .andExpect(status().isOk());

        Job ended = ended(asked);
        assertThat(ended.state()).isEqualTo(JobState.CANCELLED);
        assertThat(ended.actions()).isEmpty();
        assertThatThrownBy(() -> AsPortal.call(() -> jobs.result(house, asked.id())))
                .isInstanceOfSatisfying(Problem.class, p -> assertThat(p.code()).isEqualTo("job-has-no-result"));
        http.perform(post("/api/v1/houses/{h}/jobs/{j}/cancellation", house, asked.id())
                        .with(SignedIn.as(Role.DESIGNER, house)))
                .andExpect(status().isConflict())
                .andExpect(jsonPath("$.code").value("job-has-ended"));
    }

    @Test
    void a_failure_says_where_and_when() {
        Job ended = ended(ask("\"fail\""));

        assertThat(ended.state()).isEqualTo(JobState.FAILED);
        assertThat(ended.failure()).contains("plywood").contains("3 February");
    }

    @Test
    void a_fault_ends_the_job_without_showing_its_insides() {
        Job ended = ended(ask("\"break\""));

        assertThat(ended.state()).isEqualTo(JobState.FAILED);
        assertThat(ended.failure()).doesNotContain("an inner secret").contains("server's log");
    }

    @Test
    void it_is_watched_as_server_sent_events_until_it_ends() throws Exception {
        Job asked = ask("40");

        MvcResult stream = http.perform(get("/api/v1/houses/{h}/jobs/{j}/progress", house, asked.id())
                        .with(SignedIn.as(Role.OWNER, house)))
                .andReturn();
        stream.getAsyncResult(10_000);
        String told = http.perform(asyncDispatch(stream))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString(StandardCharsets.UTF_8);

        assertThat(told).contains("event:job").contains("\"state\":\"RUNNING\"").contains("\"state\":\"DONE\"");
    }

    @Test
    void work_of_an_instance_that_died_is_begun_again_three_times_at_most() {
        Job asked = ask("1");
        ended(asked);
        jdbc.sql("update job.job set state = 'RUNNING', result = null, ended_at = null, attempts = 3 where id = ?")
                .param(asked.id())
                .update();
        jdbc.sql("""
                        insert into scheduled_tasks (task_name, task_instance, execution_time, picked, picked_by,
                            last_heartbeat, version)
                        values ('job', ?, now() - interval '5 minutes', true, 'an instance that died',
                            now() - interval '5 minutes', 1)""").param(asked.id().toString()).update();

        await().atMost(Duration.ofSeconds(40)).until(() -> now(asked).state().ended());

        assertThat(now(asked).state()).isEqualTo(JobState.FAILED);
        assertThat(now(asked).failure()).contains("3 times");
    }

    private Job ask(String request) {
        return AsPortal.call(() -> jobs.ask(CountingKind.KIND, house, "Count", request));
    }

    private Job now(Job job) {
        return AsPortal.call(() -> jobs.get(house, job.id()));
    }

    private Job ended(Job job) {
        await().atMost(Duration.ofSeconds(15)).until(() -> now(job).state().ended());
        return now(job);
    }
}
