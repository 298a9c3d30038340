package oakum.portal.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Clock changes after the rules of the European Union: in Helsinki 04:00 becomes 03:00 on the last Sunday of October. */
class TimeTextTest {
    @ParameterizedTest
    @CsvSource(textBlock = """
        2026-05-14T09:30:00Z,           , 2026-05-14T09:30:00Z
        2026-05-14T09:30+03:00,         , 2026-05-14T06:30:00Z
        2026-05-14 09:30:00,      +02:00, 2026-05-14T07:30:00Z
        2026-05-14 09:30:00.25,   +02:00, 2026-05-14T07:30:00.250Z
        2026-05-14T24:00,            UTC, 2026-05-15T00:00:00Z
        2026-01-14T12:00, Europe/Helsinki, 2026-01-14T10:00:00Z
        2026-07-14T12:00, Europe/Helsinki, 2026-07-14T09:00:00Z
        """)
    void reads_iso_8601(String text, @Nullable String zone, String instant) throws Unreadable {
        assertThat(read(null, zone, text)).containsExactly(instant);
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
        MM/dd/yyyy HH:mm, 01/31/1988 24:00, 1988-02-01T00:00:00Z
        MM/dd/yyyy HH:mm, 01/31/1988 01:00, 1988-01-31T01:00:00Z
        dd.MM.yyyy HH:mm, 28.02.2026 23:59, 2026-02-28T23:59:00Z
        epoch-s,          1768471200,       2026-01-15T10:00:00Z
        epoch-ms,         1768471200500,    2026-01-15T10:00:00.500Z
        """)
    void reads_other_forms(String format, String text, String instant) throws Unreadable {
        assertThat(read(format, "UTC", text)).containsExactly(instant);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "2026-02-30 10:00",
                "2026-13-01 10:00",
                "2026-05-14 25:00",
                "2026-05-14 24:01",
                "14.05.2026 10:00",
                "2026-05-1410:00",
                "NaN",
                "",
                "2026-02-30 10:24:00"
            })
    void refuses_what_is_no_time(String text) {
        assertThatThrownBy(() -> read(null, "UTC", text)).isInstanceOf(Unreadable.class);
    }

    @Test
    void refuses_a_time_without_offset_and_zone() {
        assertThatThrownBy(() -> read(null, null, "2026-05-14 10:00")).hasMessageContaining("name its zone");
    }

    @Test
    void refuses_the_hour_that_the_clock_skips() {
        assertThatThrownBy(() -> read(null, "Europe/Helsinki", "2026-03-29 03:30"))
                .hasMessageContaining("never was in Europe/Helsinki")
                .hasMessageContaining("2026-03-29T04:00");
    }

    @Test
    void the_order_of_the_rows_tells_the_two_passes_of_the_repeated_hour_apart() throws Unreadable {
        assertThat(read(
                        null,
                        "Europe/Helsinki",
                        "2026-10-25 02:00",
                        "2026-10-25 02:30",
                        "2026-10-25 03:00",
                        "2026-10-25 03:30",
                        "2026-10-25 03:00",
                        "2026-10-25 03:30",
                        "2026-10-25 04:00"))
                .containsExactly(
                        "2026-10-24T23:00:00Z",
                        "2026-10-24T23:30:00Z",
                        "2026-10-25T00:00:00Z",
                        "2026-10-25T00:30:00Z",
                        "2026-10-25T01:00:00Z",
                        "2026-10-25T01:30:00Z",
                        "2026-10-25T02:00:00Z");
    }

    @Test
    void newest_first_is_an_order_too() throws Unreadable {
        assertThat(read(
                        null,
                        "Europe/Helsinki",
                        "2026-10-25 05:00",
                        "2026-10-25 04:00",
                        "2026-10-25 03:00",
                        "2026-10-25 03:00",
                        "2026-10-25 02:00"))
                .containsExactly(
                        "2026-10-25T03:00:00Z",
                        "2026-10-25T02:00:00Z",
                        "2026-10-25T01:00:00Z",
                        "2026-10-25T00:00:00Z",
                        "2026-10-24T23:00:00Z");
    }

    @Test
    void refuses_the_repeated_hour_where_no_row_before_tells() {
        assertThatThrownBy(() -> read(null, "Europe/Helsinki", "2026-10-25 03:30"))
                .hasMessageContaining("twice in Europe/Helsinki");
    }

    @Test
    void refuses_the_repeated_hour_after_a_gap_and_for_a_row_sent_twice() {
        assertThatThrownBy(
                        () -> read(null, "Europe/Helsinki", "2026-10-24 10:00", "2026-10-24 10:10", "2026-10-25 03:30"))
                .isInstanceOf(Unreadable.class);
        assertThatThrownBy(
                        () -> read(null, "Europe/Helsinki", "2026-10-25 02:50", "2026-10-25 03:00", "2026-10-25 03:00"))
                .isInstanceOf(Unreadable.class);
    }

    private static List<String> read(@Nullable String format, @Nullable String zone, String... texts)
            throws Unreadable {
        TimeText time = new TimeText(format, zone == null ? null : ZoneId.of(zone));
        TimeText.Order order = new TimeText.Order();
        List<String> instants = new ArrayList<>();
        for (String text : texts) {
            instants.add(time.parse(text, order).toString());
        }
        return instants;
    }
}
