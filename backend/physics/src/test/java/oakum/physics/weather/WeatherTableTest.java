package oakum.physics.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.function.UnaryOperator;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Refused;
import oakum.physics.moistair.BelowFreezing;
import oakum.physics.moistair.MoistAir;
import oakum.physics.weather.WeatherColumn.Given;
import oakum.physics.weather.WeatherColumn.Meaning;
import oakum.physics.weather.WeatherTable.Dates;
import oakum.physics.weather.WeatherTable.Sums;
import org.junit.jupiter.api.Test;

/** Tables of several shapes, whole and broken. */
class WeatherTableTest {
    private static final Place PLACE = new Place("Somewhere cold", 61.5, 23.8, 110, 2);
    private static final int YEAR = 8760;

    private static WeatherTable plain() {
        return map(1, 2, ',', '.', "yyyy-MM-dd HH:mm", 2, Dates.AS_DATED, Sums.BEFORE_STAMP, BelowFreezing.OVER_WATER);
    }

    private static WeatherTable map(
            int header,
            int first,
            char delimiter,
            char decimal,
            String time,
            double clockH,
            Dates dates,
            Sums sums,
            BelowFreezing humidity) {
        return new WeatherTable(
                header,
                first,
                delimiter,
                decimal,
                List.of("time"),
                time,
                clockH,
                dates,
                sums,
                humidity,
                Set.of("-99"),
                List.of(
                        new WeatherColumn("t", Meaning.AIR_TEMPERATURE, Given.CELSIUS),
                        new WeatherColumn("rh", Meaning.RELATIVE_HUMIDITY, Given.PERCENT),
                        new WeatherColumn("rain", Meaning.PRECIPITATION, Given.MILLIMETRE)));
    }

    /** A year whose temperature tells the hour: the hour of the day, and rain at noon. */
    private static List<String> year(int year, int rows, int stepMinutes, IntPredicate kept) {
        List<String> lines = new ArrayList<>(List.of("time,t,rh,rain"));
        DateTimeFormatter format = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);
        LocalDateTime start = LocalDateTime.of(year, 1, 1, 0, 0);
        for (int i = 0; i < rows; i++) {
            LocalDateTime at = start.plusMinutes((long) i * stepMinutes);
            if (kept.test(i)) {
                lines.add(at.format(format) + "," + at.getHour() + ",80," + (at.getHour() == 12 ? "0.5" : "0"));
            }
        }
        return lines;
    }

    private static List<String> changed(List<String> lines, int line, UnaryOperator<String> change) {
        List<String> other = new ArrayList<>(lines);
        other.set(line - 1, change.apply(other.get(line - 1)));
        return other;
    }

    private static List<String> codes(HourlyWeather weather) {
        return weather.notices().stream().map(Notice::code).toList();
    }

    @Test
    void a_state_belongs_to_its_stamp_and_rain_to_the_hour_before_it() {
        HourlyWeather weather = plain().read(PLACE, "made up", year(2019, YEAR, 60, i -> true));

        assertThat(weather.isWholeYear()).isTrue();
        assertThat(weather.temperatureC(12)).isEqualTo(12);
        assertThat(weather.value(WeatherQuantity.PRECIPITATION, 11)).isEqualTo(0.5);
        assertThat(weather.value(WeatherQuantity.PRECIPITATION, 12)).isZero();
        assertThat(weather.vapourPressurePa(12)).isEqualTo(0.8 * MoistAir.saturationPressurePa(12));
        assertThat(codes(weather)).containsExactly("humidity-convention");
    }

    @Test
    void finer_steps_are_averaged_around_the_hour_and_their_rain_summed() {
        HourlyWeather weather = plain().read(PLACE, "made up", year(2019, 6 * YEAR, 10, i -> true));

        // stamps from half past eleven to twenty past twelve
        assertThat(weather.temperatureC(12)).isCloseTo(0.5 * 11 + 0.5 * 12, within(1e-12));
        // stamps 12:10 to 12:50 lie in the hour from 12, the stamp 12:00 in the one before
        assertThat(weather.value(WeatherQuantity.PRECIPITATION, 12)).isCloseTo(5 * 0.5, within(1e-9));
        assertThat(weather.value(WeatherQuantity.PRECIPITATION, 11)).isCloseTo(0.5, within(1e-9));
    }

    @Test
    void eight_header_lines_semicolons_decimal_commas_fahrenheit_and_universal_time() {
        List<String> lines = new ArrayList<>(List.of("a", "b", "c", "d", "e", "f", "Zeit;Te;Taupunkt", "unit line"));
        LocalDateTime start = LocalDateTime.of(2019, 1, 1, 0, 0);
        for (int i = 0; i < 48; i++) {
            LocalDateTime at = start.plusHours(i);
            lines.add(at.format(DateTimeFormatter.ofPattern("dd.MM.uuuu HH:mm", Locale.ROOT)) + ";"
                    + (at.getHour() == 6 ? "50,0" : "41,0") + ";" + "32,0");
        }
        WeatherTable table = new WeatherTable(
                7,
                9,
                ';',
                ',',
                List.of("Zeit"),
                "dd.MM.yyyy HH:mm",
                0,
                Dates.AS_DATED,
                Sums.AFTER_STAMP,
                BelowFreezing.OVER_WATER,
                Set.of(),
                List.of(
                        new WeatherColumn("Te", Meaning.AIR_TEMPERATURE, Given.FAHRENHEIT),
                        new WeatherColumn("Taupunkt", Meaning.DEW_POINT, Given.FAHRENHEIT)));

        HourlyWeather weather = table.read(PLACE, "made up", lines);

        // six o'clock universal time is eight o'clock here
        assertThat(weather.start()).isEqualTo(LocalDateTime.of(2019, 1, 1, 2, 0));
        assertThat(weather.hours()).isEqualTo(48);
        assertThat(weather.time(6)).isEqualTo(LocalDateTime.of(2019, 1, 1, 8, 0));
        assertThat(weather.temperatureC(6)).isCloseTo(10, within(1e-12));
        assertThat(weather.temperatureC(7)).isCloseTo(5, within(1e-12));
        assertThat(weather.vapourPressurePa(6)).isCloseTo(611.2, within(1.0));
    }

    @Test
    void below_freezing_ice_and_water_are_a_fifth_apart() {
        List<String> cold = List.of("time,t,rh,rain", "2019-01-01 00:00,-20,80,0", "2019-01-01 01:00,-20,80,0");
        double overWater = plain().read(PLACE, "made up", cold).vapourPressurePa(0);
        double overIce = map(
                        1,
                        2,
                        ',',
                        '.',
                        "yyyy-MM-dd HH:mm",
                        2,
                        Dates.AS_DATED,
                        Sums.BEFORE_STAMP,
                        BelowFreezing.OVER_ICE)
                .read(PLACE, "made up", cold)
                .vapourPressurePa(0);

        assertThat(overIce / overWater).isCloseTo(0.82, within(0.01));
        assertThat(plain().read(PLACE, "made up", cold).notices())
                .anySatisfy(notice -> assertThat(notice.sentence()).contains("over water"));
    }

    @Test
    void the_8759_hours_of_a_year_without_its_first_are_completed_with_a_notice() {
        HourlyWeather weather = plain().read(PLACE, "made up", year(2019, YEAR, 60, i -> i != 0));

        assertThat(weather.isWholeYear()).isTrue();
        assertThat(weather.temperatureC(0)).isEqualTo((23 + 1) / 2.0);
        assertThat(codes(weather)).contains("gaps-bridged");
    }

    @Test
    void the_8784_hours_of_a_leap_year_lose_29_february_with_a_notice() {
        HourlyWeather weather = plain().read(
                        PLACE,
                        "made up",
                        changed(
                                year(2020, YEAR + 24, 60, i -> true),
                                2 + 59 * 24,
                                line -> line.replace(",0,80", ",-33,80")));

        assertThat(weather.isWholeYear()).isTrue();
        assertThat(codes(weather)).contains("leap-day-removed");
        assertThat(weather.values(WeatherQuantity.AIR_TEMPERATURE)).doesNotContain(-33.0);
    }

    @Test
    void short_gaps_are_bridged_by_a_line_longer_ones_by_the_days_around() {
        int noon = 100 * 24 + 12;
        HourlyWeather line = plain().read(PLACE, "made up", year(2019, YEAR, 60, i -> i < noon || i > noon + 2));
        HourlyWeather days = plain().read(PLACE, "made up", year(2019, YEAR, 60, i -> i < noon || i > noon + 30));

        assertThat(line.temperatureC(noon + 1)).isEqualTo(13);
        assertThat(days.temperatureC(noon + 1)).isEqualTo(13);
        assertThat(days.temperatureC(noon + 20)).isEqualTo((noon + 20) % 24);
        assertThat(days.notices())
                .anySatisfy(notice -> assertThat(notice.sentence())
                        .contains("31 hours")
                        .contains("2019-04-11T12:00")
                        .contains("days around"));
    }

    @Test
    void four_days_without_temperature_are_refused_by_name_and_place() {
        assertThatThrownBy(() -> plain().read(PLACE, "made up", year(2019, YEAR, 60, i -> i < 2000 || i > 2000 + 95)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("air temperature is missing for 96 hours")
                .hasMessageContaining("2019-03-25T08:00");
    }

    @Test
    void rain_that_is_mostly_missing_is_left_out_with_advice() {
        List<String> lines = year(2019, YEAR, 60, i -> true).stream()
                .map(line -> line.endsWith(",0") ? line.replaceAll(",0$", ",-99.000") : line)
                .map(line -> line.startsWith("2019-02") ? line.replaceAll(",[^,]*$", ",") : line)
                .toList();

        HourlyWeather weather = plain().read(PLACE, "made up", lines);

        assertThat(weather.has(WeatherQuantity.PRECIPITATION)).isFalse();
        assertThat(codes(weather)).contains("quantity-left-out");
        assertThatThrownBy(() -> weather.value(WeatherQuantity.PRECIPITATION, 0))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("has no precipitation");
    }

    @Test
    void a_wild_value_is_refused_with_line_column_and_range() {
        List<String> lines =
                changed(year(2019, YEAR, 60, i -> true), 500, line -> line.replaceAll(",\\d+,80", ",81,80"));

        assertThatThrownBy(() -> plain().read(PLACE, "made up", lines))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("line 500, column t")
                .hasMessageContaining("81")
                .hasMessageContaining("-70 to 60 Cel");
    }

    @Test
    void humidity_slightly_above_saturation_is_capped_with_a_notice_and_far_above_refused() {
        List<String> lines = year(2019, YEAR, 60, i -> true);
        HourlyWeather capped =
                plain().read(PLACE, "made up", changed(lines, 500, line -> line.replace(",80,", ",103,")));

        assertThat(codes(capped)).contains("humidity-capped");
        assertThat(capped.relativeHumidityOverWater(498)).isCloseTo(1, within(1e-9));
        assertThatThrownBy(() ->
                        plain().read(PLACE, "made up", changed(lines, 500, line -> line.replace(",80,", ",130,"))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("relative humidity")
                .hasMessageContaining("0 to 1.1");
    }

    @Test
    void what_is_no_number_or_no_time_is_refused_with_its_line() {
        List<String> lines = year(2019, YEAR, 60, i -> true);

        assertThatThrownBy(() ->
                        plain().read(PLACE, "made up", changed(lines, 9, line -> line.replaceAll(",\\d+,80", ",x,80"))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("line 9, column t: \"x\" is no number");
        assertThatThrownBy(() -> plain().read(
                                PLACE, "made up", changed(lines, 9, line -> line.replace("2019-01-01", "2019-13-01"))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("line 9")
                .hasMessageContaining("is no time");
        assertThatThrownBy(() ->
                        plain().read(PLACE, "made up", List.of("time,temperature,rh,rain", "2019-01-01 00:00,1,2,3")))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("has no column \"t\"");
    }

    @Test
    void rows_twice_and_out_of_order_are_told() {
        List<String> lines = new ArrayList<>(year(2019, YEAR, 60, i -> true));
        lines.add(lines.get(300));

        assertThat(codes(plain().read(PLACE, "made up", lines))).contains("rows-out-of-order", "times-given-twice");
    }

    @Test
    void a_map_that_makes_no_sense_is_refused() {
        assertThatThrownBy(() -> new WeatherColumn("t", Meaning.AIR_TEMPERATURE, Given.PERCENT))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("°C, °F, K");
        assertThatThrownBy(() -> new WeatherTable(
                        1,
                        2,
                        ',',
                        '.',
                        List.of("time"),
                        "",
                        0,
                        Dates.AS_DATED,
                        Sums.AFTER_STAMP,
                        BelowFreezing.OVER_WATER,
                        Set.of(),
                        List.of(new WeatherColumn("t", Meaning.AIR_TEMPERATURE, Given.CELSIUS))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("relative humidity");
    }

    @Test
    void the_hash_stands_for_the_values_and_not_for_how_they_were_written() {
        List<String> lines = year(2019, YEAR, 60, i -> true);
        HourlyWeather one = plain().read(PLACE, "made up", lines);
        HourlyWeather same = plain().read(
                        PLACE,
                        "another name",
                        lines.stream()
                                .map(line -> line.replace(",80,", ",80.0,"))
                                .toList());
        HourlyWeather other =
                plain().read(PLACE, "made up", changed(lines, 4000, line -> line.replace(",80,", ",81,")));

        assertThat(one.contentHash()).startsWith("sha256:").isEqualTo(same.contentHash());
        assertThat(other.contentHash()).isNotEqualTo(one.contentHash());
    }

    @Test
    void a_calendar_year_is_cut_from_a_longer_table() {
        HourlyWeather longer = plain().read(PLACE, "made up", year(2019, 2 * YEAR + 100, 60, i -> true));

        assertThat(longer.isWholeYear()).isFalse();
        assertThat(longer.calendarYear(2019).isWholeYear()).isTrue();
        assertThat(longer.calendarYear(2020).temperatureC(8000)).isEqualTo(8000 % 24);
        assertThatThrownBy(() -> longer.calendarYear(2021))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("not all of 2021");
    }
}
