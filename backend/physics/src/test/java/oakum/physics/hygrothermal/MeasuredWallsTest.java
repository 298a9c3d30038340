package oakum.physics.hygrothermal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import oakum.physics.exposure.BoundarySeries;
import oakum.physics.exposure.IndoorHours;
import oakum.physics.exposure.OutdoorFace;
import oakum.physics.hygrothermal.MeasuredSeries.Comparison;
import oakum.physics.material.MaterialLibrary;
import oakum.physics.moistair.Iso13788Saturation;
import oakum.physics.moistair.MoistAir;
import oakum.physics.weather.HourlyWeather;
import oakum.physics.weather.Place;
import oakum.physics.weather.SkyModel;
import oakum.physics.weather.TiltedSurface;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * Measured walls and attics, computed from the air measured on both sides. Writes {@code
 * docs/explanation/measured-walls.md} and its plots with {@code -Ddocs.write=true}; skipped where the open data is not
 * there.
 */
class MeasuredWallsTest {
    private static final double SEA_LEVEL_PA = 101_325;
    private static final int RUN_IN_H = 31 * 24;
    private static final double INSIDE_W_PER_M2_K = 8;
    private static final double OUTSIDE_W_PER_M2_K = 17;
    private static final double INSIDE_S_PER_M = 3e-8;
    private static final double OUTSIDE_S_PER_M = 1e-7;

    /** Aim of the comparison at the sheathing plane. */
    private static final double AIM_K = 1.5;

    private static final double AIM_POINTS = 8;

    private static final Path DOCS = Path.of("..", "..", "docs");
    private static final String WOOL_BATT = "mineral-wool-batt";
    private static final String GAP_SENSOR = "air_gap_behind_brick";
    private static final String PLANE = "interface_insulation_windbarrier";

    private static WallLayer layer(String material, double thicknessM, double humidity) {
        return MaterialLayers.of(
                material, material, thicknessM, MaterialLibrary.require(material, material), humidity, SEA_LEVEL_PA);
    }

    /** Sensors inside over hours that they share with the air on both sides. */
    private static final class Site {
        private final Place place;
        private final String prefix;
        private final HourlyWeather outside;
        private final HourlyWeather inside;

        Site(String house, String prefix, String outside, String inside) {
            this.place = Objects.requireNonNull(MeasuredSeries.PLACES.get(house));
            this.prefix = prefix;
            HourlyWeather air = sensor(outside);
            this.inside = sensor(inside);
            int ahead = (int) ChronoUnit.HOURS.between(air.start(), this.inside.start());
            this.outside = ahead == 0 ? air.stretch(air.start(), Math.min(air.hours(), this.inside.hours())) : air;
        }

        HourlyWeather sensor(String name) {
            return MeasuredSeries.sensor(place, prefix + name);
        }
    }

    /** What one run gives at planes, hour by hour. */
    private static final class Traces {
        private final double[][] temperatureC;
        private final double[][] humidity;
        private @Nullable RunResult result;

        Traces(int planes, int hours) {
            temperatureC = new double[planes][hours];
            humidity = new double[planes][hours];
        }
    }

    private static Traces run(Wall wall, Climate climate, int hours, double startC) {
        Traces traces = new Traces(wall.planes().size(), hours);
        RunResult result = HygrothermalRun.of(
                        wall, climate, RunPlan.hours(hours - 1).startingAt(startC))
                .run(
                        view -> {
                            for (int p = 0; p < view.planes(); p++) {
                                double t = view.planeTemperatureC(p);
                                traces.temperatureC[p][view.hour()] = t;
                                traces.humidity[p][view.hour()] = overWater(t, view.planeHumidity(p));
                            }
                        },
                        RunControl.NONE);
        assertThat(result.outcome()).isEqualTo(RunResult.Outcome.FINISHED);
        assertThat(result.balance().waterErrorOfThroughput()).isLessThan(1e-6);
        assertThat(result.balance().heatErrorOfThroughput()).isLessThan(1e-6);
        traces.result = result;
        return traces;
    }

    /** As a sensor tells it: counted over water also below freezing. */
    private static double overWater(double temperatureC, double humidityOverIce) {
        return humidityOverIce
                * Iso13788Saturation.pressurePa(temperatureC)
                / MoistAir.saturationPressureOverWaterPa(temperatureC);
    }

    private static Climate climate(HourlyWeather outside, HourlyWeather inside, double skyView, double airChanges) {
        OutdoorFace face = new OutdoorFace(
                new TiltedSurface(90, 0, 0.2, SkyModel.BRIGHT_SUN_AND_HORIZON),
                0.7,
                0.9,
                skyView,
                new OutdoorFace.ConstantFilm(OUTSIDE_W_PER_M2_K));
        BoundarySeries series = BoundarySeries.of(outside, face, IndoorHours.measured(inside, outside))
                .done();
        return BoundaryClimate.of(series, 0, hour -> airChanges);
    }

    private static Comparison compare(
            String name, Traces traces, int plane, HourlyWeather measured, HourlyWeather clock) {
        Comparison comparison = new Comparison(name, RUN_IN_H);
        int ahead = (int) ChronoUnit.HOURS.between(measured.start(), clock.start());
        for (int hour = 1; hour < traces.temperatureC[plane].length && ahead + hour < measured.hours(); hour++) {
            comparison.add(
                    hour,
                    traces.temperatureC[plane][hour],
                    measured.temperatureC(ahead + hour),
                    traces.humidity[plane][hour],
                    measured.relativeHumidityOverWater(ahead + hour));
        }
        return comparison;
    }

    /** Gypsum board with paint, sheet, wool between studs or a stud, mineral wool as wind barrier. */
    private static List<WallLayer> innerLeaf(String betweenFaces) {
        return new ArrayList<>(List.of(
                layer("latex-paint", 0, 0.4),
                layer("gypsum-board", 0.013, 0.4),
                layer("polyethylene", 0, 0.4),
                layer(betweenFaces, 0.100, 0.6),
                layer("mineral-wool-board", 0.050, 0.7)));
    }

    private static final int WOOL = 3;
    private static final int GAP = 5;
    private static final int BRICK = 6;

    /** One set of assumptions about what the readings do not say. */
    private record Case(String name, WallLayer brick, double airChanges, double skyView) {}

    private static Wall drivenFromGap(String betweenFaces) {
        return new Wall(
                innerLeaf(betweenFaces),
                Face.film(INSIDE_W_PER_M2_K, INSIDE_S_PER_M),
                Face.film(INSIDE_W_PER_M2_K, INSIDE_S_PER_M),
                List.of(new Plane(PLANE, WOOL, 0.100)),
                List.of());
    }

    /** A brick whose pores take up little before they are flooded: 12 kg/m³ at saturation, and no liquid flow. */
    private static WallLayer sparingBrick() {
        LayerProperties properties =
                new TabulatedProperties.Description(h -> 12 * h, h -> 10 / 1.9e-10, h -> 0, h -> 0.7).overHumidity();
        return new SolidLayer("sparing brick", 0.080, properties, 1700, 1000, 0.75);
    }

    private static Wall brickVeneer(WallLayer brick) {
        List<WallLayer> layers = innerLeaf(WOOL_BATT);
        layers.add(new AirLayer("air gap", 0.0125, 8, INSIDE_S_PER_M, true, 0.85));
        layers.add(brick);
        return new Wall(
                layers,
                Face.film(INSIDE_W_PER_M2_K, INSIDE_S_PER_M),
                Face.film(OUTSIDE_W_PER_M2_K, OUTSIDE_S_PER_M),
                List.of(new Plane(PLANE, WOOL, 0.100), new Plane(GAP_SENSOR, GAP, 0.006)),
                List.of());
    }

    @Test
    void walls_and_attics_come_out_as_measured() throws IOException {
        Map<String, String> page = new LinkedHashMap<>();
        brickVeneerFromItsGap(page);
        brickVeneerFromOutside(page);
        attics(page);
        String template = new String(
                Objects.requireNonNull(getClass().getResourceAsStream("measured-walls.template.md"))
                        .readAllBytes(),
                StandardCharsets.UTF_8);
        for (Map.Entry<String, String> part : page.entrySet()) {
            template = template.replace("{{" + part.getKey() + "}}", part.getValue());
        }
        assertThat(template).doesNotContain("{{");
        agrees(DOCS.resolve("explanation/measured-walls.md"), template);
    }

    private static void brickVeneerFromItsGap(Map<String, String> page) throws IOException {
        Site r1 = new Site("R1", "R1-wall__", "outdoor_fmi", "indoor");
        HourlyWeather gap = r1.sensor(GAP_SENSOR);
        HourlyWeather plane = r1.sensor(PLANE);
        Climate climate = climate(gap, r1.inside, 0, 0);
        Traces between = run(drivenFromGap(WOOL_BATT), climate, gap.hours(), 10);
        Traces stud = run(drivenFromGap("spruce"), climate, gap.hours(), 10);
        Comparison atPlane = compare("insulation to wind barrier, midway between studs", between, 0, plane, gap);
        List<Comparison> rows = new ArrayList<>(List.of(atPlane));
        Map<String, String> onStuds = new LinkedHashMap<>();
        onStuds.put("line_stud_windbarrier_right_top", "stud to wind barrier, near the top");
        onStuds.put("corner_bottomplate_stud_windbarrier_left", "corner of stud and bottom plate, left");
        onStuds.put("corner_bottomplate_stud_windbarrier_right", "corner of stud and bottom plate, right");
        for (Map.Entry<String, String> sensor : onStuds.entrySet()) {
            HourlyWeather measured = r1.sensor(sensor.getKey());
            rows.add(compare(sensor.getValue() + ", taken between studs", between, 0, measured, gap));
            rows.add(compare(sensor.getValue() + ", taken through a stud", stud, 0, measured, gap));
        }
        page.put("fromGap", table(rows));
        picture("measured-wall-r1.svg", "R1, insulation to wind barrier", between, plane, gap, 6, new double[] {
            -15, 15, 5
        });

        assertThat(atPlane.rmseK()).isLessThan(AIM_K);
        assertThat(atPlane.rmsePoints()).isLessThan(AIM_POINTS);
    }

    private static void brickVeneerFromOutside(Map<String, String> page) {
        Site r1 = new Site("R1", "R1-wall__", "outdoor_fmi", "indoor");
        HourlyWeather gap = r1.sensor(GAP_SENSOR);
        HourlyWeather plane = r1.sensor(PLANE);
        List<Comparison> rows = new ArrayList<>();
        WallLayer moist = layer("clay-brick", 0.080, 0.9);
        WallLayer drier = layer("clay-brick", 0.080, 0.75);
        for (Case c : List.of(
                new Case("1 air change an hour, brick starts at 90 %", moist, 1, 0),
                new Case("10 air changes, brick starts at 90 %", moist, 10, 0),
                new Case("10 air changes, brick starts at 75 %", drier, 10, 0),
                new Case("100 air changes, brick starts at 90 %", moist, 100, 0),
                new Case("10 air changes, sparing brick", sparingBrick(), 10, 0),
                new Case("100 air changes, sparing brick", sparingBrick(), 100, 0),
                new Case("10 air changes, brick starts at 90 %, a quarter of its view is sky", moist, 10, 0.25))) {
            Traces whole = run(
                    brickVeneer(c.brick()),
                    climate(r1.outside, r1.inside, c.skyView(), c.airChanges()),
                    r1.outside.hours(),
                    5);
            Comparison atPlane = compare("insulation to wind barrier: " + c.name(), whole, 0, plane, r1.outside);
            rows.add(atPlane);
            rows.add(compare("air gap: " + c.name(), whole, 1, gap, r1.outside));
            assertThat(atPlane.rmseK()).as(c.name()).isLessThan(AIM_K);
            if (c.brick() == drier) {
                RunResult.LayerResult brick =
                        Objects.requireNonNull(whole.result).layers().get(BRICK);
                page.put(
                        "brickWater",
                        String.format(
                                Locale.ROOT,
                                "%.1f kg/m² at the start and %.1f kg/m² at the end, at most %.1f mass %%",
                                brick.startKgPerM2(),
                                brick.endKgPerM2(),
                                brick.peakMassPercent()));
            }
        }
        page.put("fromOutside", table(rows));
    }

    private static void attics(Map<String, String> page) throws IOException {
        List<Comparison> rows = new ArrayList<>();
        Map<String, Double> woolM = new LinkedHashMap<>();
        woolM.put("R3", 0.5);
        woolM.put("R4", 0.2);
        woolM.put("R7", 0.3);
        for (Map.Entry<String, Double> house : woolM.entrySet()) {
            Site site = new Site(house.getKey(), house.getKey() + "-roof__", "roofmiddle_airmiddle", "indoor1");
            HourlyWeather top = site.sensor("roofmiddle_insulationtop");
            Wall ceiling = new Wall(
                    List.of(
                            layer("gypsum-board", 0.013, 0.4),
                            layer("polyethylene", 0, 0.4),
                            layer(WOOL_BATT, house.getValue(), 0.7)),
                    Face.film(10, INSIDE_S_PER_M),
                    Face.film(10, INSIDE_S_PER_M),
                    List.of(new Plane("insulation top", 2, house.getValue())),
                    List.of());
            int hours = Math.min(site.outside.hours(), site.inside.hours());
            HourlyWeather above = site.outside.stretch(site.outside.start(), hours);
            Traces traces = run(ceiling, climate(above, site.inside, 0, 0), hours, 5);
            Comparison computed = compare(house.getKey() + ", computed", traces, 0, top, above);
            rows.add(computed);
            rows.add(compare(
                    house.getKey() + ", the attic air itself taken for it", itself(above, hours), 0, top, above));
            if (house.getKey().equals("R4")) {
                picture("measured-attic-r4.svg", "R4, top of the insulation", traces, top, above, 48, new double[] {
                    -20, 30, 10
                });
            }
            assertThat(computed.rmseK()).as(house.getKey()).isLessThan(AIM_K);
            assertThat(computed.rmsePoints()).as(house.getKey()).isLessThan(AIM_POINTS);
        }
        page.put("attics", table(rows));
    }

    private static Traces itself(HourlyWeather air, int hours) {
        Traces traces = new Traces(1, hours);
        for (int i = 0; i < hours; i++) {
            traces.temperatureC[0][i] = air.temperatureC(i);
            traces.humidity[0][i] = air.relativeHumidityOverWater(i);
        }
        return traces;
    }

    private static String table(List<Comparison> rows) {
        StringBuilder table =
                new StringBuilder("| where | hours | T, mean error K | T, RMSE K | RH, mean error points |"
                        + " RH, RMSE points |\n|---|---|---|---|---|---|\n");
        rows.forEach(c -> table.append(String.format(
                Locale.ROOT,
                "| %s | %d | %+.1f | %.1f | %+.0f | %.0f |\n",
                c.name(),
                c.hours(),
                c.biasK(),
                c.rmseK(),
                c.biasPoints(),
                c.rmsePoints())));
        return table.toString().strip();
    }

    private static void picture(
            String file,
            String title,
            Traces traces,
            HourlyWeather measured,
            HourlyWeather clock,
            int every,
            double[] temperatures)
            throws IOException {
        if (!Boolean.getBoolean("docs.write")) {
            return;
        }
        int ahead = (int) ChronoUnit.HOURS.between(measured.start(), clock.start());
        int hours = Math.min(traces.temperatureC[0].length, measured.hours() - ahead) - RUN_IN_H;
        double[] t = new double[hours];
        double[] h = new double[hours];
        double[] computedT = new double[hours];
        double[] computedH = new double[hours];
        for (int i = 0; i < hours; i++) {
            t[i] = measured.temperatureC(ahead + RUN_IN_H + i);
            h[i] = 100 * measured.relativeHumidityOverWater(ahead + RUN_IN_H + i);
            computedT[i] = traces.temperatureC[0][RUN_IN_H + i];
            computedH[i] = 100 * traces.humidity[0][RUN_IN_H + i];
        }
        String svg = new MeasuredPlot(title, clock.time(RUN_IN_H), hours, every)
                .panel("temperature, °C", t, computedT, temperatures[0], temperatures[1], temperatures[2])
                .panel("relative humidity over water, %", h, computedH, 20, 100, 20)
                .done();
        Files.writeString(DOCS.resolve("pictures").resolve(file), svg);
    }

    /** Holds the page against what the computation says, or writes it with {@code -Ddocs.write=true}. */
    private static void agrees(Path file, String text) throws IOException {
        if (Boolean.getBoolean("docs.write")) {
            Files.writeString(file, text);
        }
        assertThat(Files.exists(file) ? Files.readString(file) : "")
                .as("%s is not what the computation says; write it anew with -Ddocs.write=true", file.normalize())
                .isEqualTo(text);
    }
}
