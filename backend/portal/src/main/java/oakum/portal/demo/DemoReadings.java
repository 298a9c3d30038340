package oakum.portal.demo;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Random;
import oakum.portal.reading.ColumnMap;
import oakum.portal.reading.Ingestion;
import oakum.portal.reading.NewSensor;
import oakum.portal.reading.ObservedProperty;
import oakum.portal.reading.Sensors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/**
 * Twenty months of readings of H3, made from the scenario's monthly means, its showers, nights and events. The same every
 * time, and taken in through the same door as any logger's file, so loading them twice doubles nothing.
 */
@Component
class DemoReadings {
    private static final String HOUSE = "H3";
    private static final ZoneId ZONE = ZoneId.of("America/New_York");
    private static final LocalDate HANDED_OVER = LocalDate.of(2024, 9, 12);
    /** Five-minute readings are kept for thirteen months, hourly ones for ever. */
    private static final LocalDate FINE_FROM = LocalDate.of(2025, 4, 14);

    private static final double[] OUTDOOR_C = {-7, -6, -2, 4, 9, 14, 18, 17.5, 13.5, 8, 3, -3};
    private static final double[] INDOOR_C = {20.8, 20.8, 20.9, 21.2, 21.8, 22.9, 24.2, 24.3, 23.0, 21.6, 21.0, 20.8};
    private static final double[] INDOOR_RH = {31, 30, 32, 37, 43, 51, 56, 57, 52, 44, 38, 33};
    private static final double[] SHEATHING = {16.9, 18.3, 18.0, 15.2, 12.6, 10.8, 9.6, 9.3, 9.8, 11.5, 13.0, 15.1};

    private final Sensors sensors;
    private final Ingestion ingestion;

    DemoReadings(Sensors sensors, Ingestion ingestion) {
        this.sensors = sensors;
        this.ingestion = ingestion;
    }

    void addSensors() {
        add("living.t", "Living room", ObservedProperty.AIR_TEMPERATURE, "living room", 0.3, 300);
        add("living.rh", "Living room", ObservedProperty.RELATIVE_HUMIDITY, "living room", 0.03, 300);
        add("bedroom.co2", "Primary bedroom", ObservedProperty.CARBON_DIOXIDE, "primary bedroom", 50.0, 300);
        add("bath.rh", "Bath up", ObservedProperty.RELATIVE_HUMIDITY, "bath up", 0.03, 300);
        add("house.pressure", "House pressure", ObservedProperty.HOUSE_PRESSURE, "mechanical room", 0.5, 300);
        add("outdoor.t", "Outdoors, shaded", ObservedProperty.AIR_TEMPERATURE, null, 0.3, 3600);
        add("sheathing.mc", "North sheathing, high", ObservedProperty.WOOD_MOISTURE, null, 0.02, 3600);
        add("filter.drop", "Across the deep filter", ObservedProperty.PRESSURE_DIFFERENCE, "mechanical room", 1.0, 900);
        add("pan.leak", "Pan under the water heater", ObservedProperty.STATE, "heater room", null, 86400);
        add("main.flow", "Water main", ObservedProperty.WATER_FLOW, "heater room", null, 60);
    }

    /** Takes in everything up to a moment. */
    void load(Instant until) {
        take(fine(until));
        take(hourly(until));
        take(filter(until));
        take(leak());
    }

    private void add(
            String key,
            String label,
            ObservedProperty property,
            @Nullable String room,
            @Nullable Double accuracy,
            int intervalS) {
        sensors.add(HOUSE, new NewSensor(key, label, property, room, null, null, accuracy, intervalS));
    }

    private void take(StringBuilder table) {
        byte[] body = table.toString().getBytes(StandardCharsets.UTF_8);
        ingestion.take(
                HOUSE,
                Ingestion.Form.DELIMITED,
                new ByteArrayInputStream(body),
                body.length,
                StandardCharsets.UTF_8,
                ColumnMap.NONE);
    }

    private static StringBuilder fine(Instant until) {
        Random noise = new Random(1);
        StringBuilder table =
                new StringBuilder(8_000_000).append("at,living.t,living.rh,bedroom.co2,bath.rh,house.pressure\n");
        Instant start = FINE_FROM.atStartOfDay(ZONE).toInstant();
        for (Instant at = start; at.isBefore(until); at = at.plus(Duration.ofMinutes(5))) {
            ZonedDateTime local = at.atZone(ZONE);
            double base = mean(INDOOR_RH, local) + firstWinter(local, 4);
            row(
                    table,
                    at,
                    mean(INDOOR_C, local) + 0.15 * noise.nextGaussian(),
                    (base + 0.7 * noise.nextGaussian()) / 100,
                    Math.rint(bedroom(local) + 15 * noise.nextGaussian()),
                    (bath(local, base) + 0.7 * noise.nextGaussian()) / 100,
                    pressure(local) + 0.1 * noise.nextGaussian());
        }
        return table;
    }

    private static StringBuilder hourly(Instant until) {
        Random noise = new Random(2);
        StringBuilder table = new StringBuilder(1_500_000).append("at,outdoor.t,sheathing.mc,living.t,living.rh\n");
        Instant fineFrom = FINE_FROM.atStartOfDay(ZONE).toInstant();
        for (Instant at = HANDED_OVER.atStartOfDay(ZONE).toInstant();
                at.isBefore(until);
                at = at.plus(Duration.ofHours(1))) {
            ZonedDateTime local = at.atZone(ZONE);
            double ofDay = Math.sin((local.getHour() - 9) / 24.0 * 2 * Math.PI);
            double outdoor = mean(OUTDOOR_C, local)
                    + 4 * ofDay
                    + 2.5 * Math.sin(local.getDayOfYear() / 3.1)
                    + noise.nextGaussian();
            double sheathing = mean(SHEATHING, local) + firstWinter(local, 1.2) + 0.1 * noise.nextGaussian();
            table.append(at);
            cell(table, outdoor);
            cell(table, sheathing / 100);
            if (at.isBefore(fineFrom)) {
                cell(table, mean(INDOOR_C, local) + 0.15 * noise.nextGaussian());
                cell(table, (mean(INDOOR_RH, local) + firstWinter(local, 4) + 0.7 * noise.nextGaussian()) / 100);
            } else {
                table.append(",,");
            }
            table.append('\n');
        }
        return table;
    }

    /** Load by week from the visit on 27 January, as it was read; between the weeks it grows evenly. */
    private static StringBuilder filter(Instant until) {
        Random noise = new Random(3);
        StringBuilder table = new StringBuilder(600_000).append("at,filter.drop\n");
        Instant visit = LocalDateTime.of(2026, 1, 27, 12, 0).atZone(ZONE).toInstant();
        for (Instant at = visit; at.isBefore(until); at = at.plus(Duration.ofMinutes(15))) {
            double weeks = Duration.between(visit, at).toMinutes() / (7 * 24 * 60.0);
            row(table, at, DemoFilter.CLEAN_HIGH_PA * DemoFilter.loadAfter(weeks) + 0.15 * noise.nextGaussian());
        }
        return table;
    }

    /** The night of 24 March: the pan saw what no flow meter sees, 0.9 litres an hour. */
    private static StringBuilder leak() {
        StringBuilder table = new StringBuilder("at,pan.leak,main.flow\n");
        double weeping = 0.9 / 1000 / 3600;
        for (LocalDate day = LocalDate.of(2026, 3, 20);
                day.isBefore(LocalDate.of(2026, 3, 28));
                day = day.plusDays(1)) {
            row(table, day.atTime(1, 0).atZone(ZONE).toInstant(), 0, 0);
        }
        LocalDate night = LocalDate.of(2026, 3, 24);
        for (int minute = 0; minute < 130; minute += 10) {
            row(table, night.atTime(1, 10).plusMinutes(minute).atZone(ZONE).toInstant(), 0, weeping);
        }
        row(table, night.atTime(LocalTime.of(3, 10, 20)).atZone(ZONE).toInstant(), 1, weeping);
        row(table, night.atTime(LocalTime.of(3, 12, 31)).atZone(ZONE).toInstant(), 1, 0);
        row(table, night.atTime(10, 40).atZone(ZONE).toInstant(), 0, 0);
        return table;
    }

    /** A shower at 06:40 and at 21:15: 88 % within nine minutes, 60 % after 35, as before after 75. */
    private static double bath(ZonedDateTime local, double base) {
        double minute = local.getHour() * 60 + local.getMinute();
        double since = Math.min(after(minute, 6 * 60 + 40), after(minute, 21 * 60 + 15));
        double high = Math.max(60, base);
        if (since <= 9) {
            return base + (88 - base) * since / 9;
        }
        if (since <= 35) {
            return 88 - (88 - high) * (since - 9) / 26;
        }
        return since <= 75 ? high - (high - base) * (since - 35) / 40 : base;
    }

    private static double after(double minute, double start) {
        return minute >= start ? minute - start : Double.POSITIVE_INFINITY;
    }

    /** 520 ppm at 22:00, a plateau from 02:30, 600 at 08:30; guests on 17 to 19 April 2026. */
    private static double bedroom(ZonedDateTime local) {
        double hour = local.getHour() + local.getMinute() / 60.0;
        LocalDate evening = hour < 12 ? local.toLocalDate().minusDays(1) : local.toLocalDate();
        boolean guests = !evening.isBefore(LocalDate.of(2026, 4, 17)) && !evening.isAfter(LocalDate.of(2026, 4, 19));
        double plateau = guests ? 1310 : 940;
        if (hour >= 22 || hour < 2.5) {
            double since = hour >= 22 ? hour - 22 : hour + 2;
            return 520 + (plateau - 520) * since / 4.5;
        }
        if (hour < 6.5) {
            return plateau;
        }
        if (hour < 8.5) {
            return plateau + (600 - plateau) * (hour - 6.5) / 2;
        }
        return hour < 12 ? 600 - 100 * (hour - 8.5) / 3.5 : 500 + 20 * (hour - 12) / 10;
    }

    /** Four hood events a week at −2.6 Pa; on 9 February 2026 the intake was iced. */
    private static double pressure(ZonedDateTime local) {
        boolean cooking = local.getHour() == 18
                && local.getMinute() < 30
                && local.getDayOfWeek().getValue() % 2 == 1;
        if (local.toLocalDate().equals(LocalDate.of(2026, 2, 9)) && local.getHour() == 18 && local.getMinute() < 5) {
            return -31;
        }
        return cooking ? -2.6 : -0.4;
    }

    private static double firstWinter(ZonedDateTime local, double amount) {
        return local.toLocalDate().isBefore(LocalDate.of(2025, 5, 1)) && local.getMonthValue() != 9 ? amount : 0;
    }

    /** Between the middles of the months, evenly. */
    private static double mean(double[] months, ZonedDateTime local) {
        double place = local.getMonthValue()
                - 1
                + (local.getDayOfMonth() - 15.5) / local.toLocalDate().lengthOfMonth();
        int before = Math.floorMod((int) Math.floor(place), 12);
        double share = place - Math.floor(place);
        return months[before] * (1 - share) + months[(before + 1) % 12] * share;
    }

    private static void row(StringBuilder table, Instant at, double... values) {
        table.append(at);
        for (double value : values) {
            cell(table, value);
        }
        table.append('\n');
    }

    private static void cell(StringBuilder table, double value) {
        table.append(',').append(rounded(value));
    }

    /** Four decimals for what people read, nine for the flow of a weeping fitting. */
    private static double rounded(double value) {
        double scale = Math.abs(value) < 0.001 ? 1e9 : 1e4;
        return Math.rint(value * scale) / scale;
    }
}
