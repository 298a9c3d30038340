package oakum.physics.hygrothermal;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Source;
import oakum.physics.envelope.AirLayerVentilation;
import oakum.physics.envelope.LayerRow;
import oakum.physics.exposure.AirLeak;
import oakum.physics.exposure.AshraeRain;
import oakum.physics.exposure.BoundarySeries;
import oakum.physics.exposure.HumidityClass;
import oakum.physics.exposure.IndoorClimate;
import oakum.physics.exposure.OutdoorFace;
import oakum.physics.material.Material;
import oakum.physics.material.MaterialLibrary;
import oakum.physics.moistair.Iso13788Saturation;
import oakum.physics.moistair.StandardAtmosphere;
import oakum.physics.weather.HourlyWeather;
import oakum.physics.weather.SkyModel;
import oakum.physics.weather.TiltedSurface;
import oakum.physics.weather.WeatherQuantity;
import oakum.physics.weather.WeatherShelves;
import org.jspecify.annotations.Nullable;

/** A wall as people say it, made ready for the solver. */
final class WallCase {
    static final Source ASSUMED = Source.proposed("what a transient run of a wall assumes where nothing is said");
    private static final Source FILMS = Source.fromMemory("EN 15026: combined films and their vapour coefficients");

    /** Combined coefficient inside, W/(m² K) (EN 15026, from memory). */
    private static final double INSIDE_FILM_W_PER_M2_K = 8;

    /** Combined coefficient outside: convection at the wind of a sheltered wall and radiation (EN 15026, from memory). */
    private static final double OUTSIDE_FILM_W_PER_M2_K = 17;

    /** β_p = 7e-9 times the convective part, s/m. */
    private static final double INSIDE_VAPOUR_S_PER_M = 7e-9 * 2.5;

    private static final double OUTSIDE_VAPOUR_S_PER_M = 7e-9 * 12.4;

    /** Of an upright layer of 25 mm or more (ISO 6946). */
    private static final double AIR_LAYER_M2K_PER_W = 0.18;

    private static final double STILL_AIR_SD_M = 0.01;
    private static final double EMISSIVITY = 0.9;
    private static final double ALBEDO = 0.2;
    private static final double USUAL_INDOOR_C = 20;
    private static final double LEAST_BOARD_CONDUCTIVITY_W_PER_M_K = 0.06;
    private static final double LOW_BUILDING_M = 9;
    private static final int HOURS_PER_YEAR = HourlyWeather.HOURS_OF_YEAR;

    final WallMoistureInput input;
    final Wall wall;
    final Climate climate;
    final List<Part> parts;
    final LocalDate firstDay;
    final List<Notice> notices = new ArrayList<>();

    /**
     * A layer with what is watched in it.
     *
     * @param material null for air
     * @param judged whether mould and rot in it would be hidden: it lies inside of the ventilated layer
     * @param innerPlane index of the plane at its inner face; the outer one follows; −1 where none is watched
     */
    record Part(LayerRow row, WallLayer layer, @Nullable Material material, boolean judged, int innerPlane) {}

    WallCase(WallMoistureInput input) {
        this.input = input;
        HourlyWeather weather = WeatherShelves.require("weatherHash", input.weatherHash());
        if (!weather.isWholeYear()) {
            throw Refused.of(
                    "weatherHash",
                    input.weatherHash(),
                    "A run over years needs the weather of a whole year (8,760 hours from 1 January); \""
                            + weather.source() + "\" has " + weather.hours() + " hours from " + weather.start() + ".",
                    ASSUMED);
        }
        double pressurePa = StandardAtmosphere.pressurePa(weather.place().altitudeM());
        List<Plane> planes = new ArrayList<>();
        List<Part> made = new ArrayList<>();
        int ventilated = outermostVentilated();
        for (int l = 0; l < input.layers().size(); l++) {
            made.add(part(l, ventilated < 0 || l < ventilated, pressurePa, planes));
        }
        this.parts = List.copyOf(made);
        requireKnown();
        this.wall = new Wall(
                parts.stream().map(Part::layer).toList(),
                Face.film(INSIDE_FILM_W_PER_M2_K, INSIDE_VAPOUR_S_PER_M),
                Face.film(OUTSIDE_FILM_W_PER_M2_K, OUTSIDE_VAPOUR_S_PER_M),
                planes,
                sources(ventilated));
        this.firstDay = weather.start().toLocalDate().withMonth(input.startMonth());
        this.climate = climate(weather, ventilated >= 0);
    }

    RunPlan plan() {
        int hours = input.years() * HOURS_PER_YEAR;
        List<Integer> mornings = new ArrayList<>();
        for (int hour = hours - HOURS_PER_YEAR + WallTape.PROFILE_HOUR; hour < hours; hour += 24) {
            mornings.add(hour);
        }
        return RunPlan.hours(hours).keepingProfilesAt(mornings);
    }

    private int outermostVentilated() {
        for (int l = input.layers().size() - 1; l >= 0; l--) {
            if (isVentilated(input.layers().get(l))) {
                return l;
            }
        }
        return -1;
    }

    private static boolean isVentilated(LayerRow row) {
        return row.ventilation() == AirLayerVentilation.WELL || row.ventilation() == AirLayerVentilation.SLIGHTLY;
    }

    private Part part(int l, boolean judged, double pressurePa, List<Plane> planes) {
        LayerRow row = input.layers().get(l);
        String field = "layers[" + row.id() + "]";
        double start = input.wetStarts().stream()
                .filter(w -> w.layerId().equals(row.id()))
                .mapToDouble(WallMoistureInput.WetStart::humidityFraction)
                .findFirst()
                .orElse(input.startHumidityFraction());
        if (row.isAir()) {
            return new Part(row, air(row, start), null, judged, -1);
        }
        Material material = material(row, field);
        WallLayer layer = MaterialLayers.of(field, row.name(), row.thicknessM(), material, start, pressurePa);
        int plane = -1;
        if (layer instanceof SolidLayer) {
            plane = planes.size();
            planes.add(new Plane(row.name() + ", inner face", l, 0));
            planes.add(new Plane(row.name() + ", outer face", l, row.thicknessM()));
        }
        return new Part(row, layer, material, judged, plane);
    }

    private Material material(LayerRow row, String field) {
        String framing = row.framingMaterialId();
        return input.cut() == WallCut.THROUGH_FRAMING && framing != null
                ? MaterialLibrary.require(field + ".framingMaterialId", framing)
                : row.material(field);
    }

    private static AirLayer air(LayerRow row, double start) {
        Double typed = row.thermalResistanceM2KPerW();
        double resistance = typed == null || typed == 0 ? AIR_LAYER_M2K_PER_W : typed;
        if (!isVentilated(row)) {
            return AirLayer.still(row.name(), row.thicknessM(), resistance, STILL_AIR_SD_M, start);
        }
        return new AirLayer(row.name(), row.thicknessM(), 2 / resistance, INSIDE_VAPOUR_S_PER_M, true, start);
    }

    private void requireKnown() {
        Set<String> known = new HashSet<>();
        for (LayerRow row : input.layers()) {
            if (!known.add(row.id())) {
                throw Refused.of(
                        "layers[" + row.id() + "].id",
                        row.id(),
                        "Two layers have the short name " + row.id() + ".",
                        ASSUMED);
            }
        }
        input.wetStarts().forEach(w -> known("wetStarts[" + w.layerId() + "].layerId", w.layerId(), known));
        known("rainLayerId", input.rainLayerId(), known);
        known("leakLayerId", input.leakLayerId(), known);
    }

    private static void known(String field, @Nullable String id, Set<String> known) {
        if (id != null && !known.contains(id)) {
            throw Refused.of(field, id, "No layer has the short name \"" + id + "\" (" + field + ").", ASSUMED);
        }
    }

    private List<MoistureSource> sources(int ventilated) {
        List<MoistureSource> sources = new ArrayList<>();
        int end = ventilated < 0 ? parts.size() : ventilated;
        if (input.rainSite() != null && input.rainEntryFraction() > 0) {
            int layer = chosen("rainLayerId", input.rainLayerId(), outermost(end, 0));
            sources.add(source(MoistureSource.Kind.RAIN, layer, MoistureSource.Side.OUTER, input.rainEntryFraction()));
        }
        if (input.leakTightness() != null) {
            int board = outermost(end, LEAST_BOARD_CONDUCTIVITY_W_PER_M_K);
            int layer = chosen("leakLayerId", input.leakLayerId(), board >= 0 ? board : outermost(end, 0));
            sources.add(source(MoistureSource.Kind.AIR_LEAK, layer, MoistureSource.Side.INNER, 1));
        }
        return sources;
    }

    /** The outermost solid layer before an index that conducts at least so well, or −1. */
    private int outermost(int end, double conductivityWPerMK) {
        for (int l = end - 1; l >= 0; l--) {
            Material material = parts.get(l).material();
            if (parts.get(l).layer() instanceof SolidLayer
                    && material != null
                    && material.conductivityWPerMK() >= conductivityWPerMK) {
                return l;
            }
        }
        return -1;
    }

    private int chosen(String field, @Nullable String id, int otherwise) {
        if (id == null) {
            return otherwise;
        }
        for (int l = 0; l < parts.size(); l++) {
            if (parts.get(l).row().id().equals(id)) {
                if (parts.get(l).layer() instanceof SolidLayer) {
                    return l;
                }
                throw Refused.of(
                        field,
                        id,
                        "\"" + parts.get(l).row().name() + "\" (" + field
                                + ") stores no water; moisture can land in a solid layer only.",
                        ASSUMED);
            }
        }
        return otherwise;
    }

    private MoistureSource source(MoistureSource.Kind kind, int layer, MoistureSource.Side side, double share) {
        double depth =
                Math.min(MoistureSource.USUAL_DEPTH_M, parts.get(layer).row().thicknessM());
        return new MoistureSource(kind, layer, side, depth, share);
    }

    private Climate climate(HourlyWeather weather, boolean cavity) {
        OutdoorFace face = new OutdoorFace(
                new TiltedSurface(input.tiltDeg(), input.azimuthDeg(), ALBEDO, SkyModel.ISOTROPIC),
                input.absorptanceFraction(),
                EMISSIVITY,
                OutdoorFace.openSkyView(input.tiltDeg()),
                new OutdoorFace.ConstantFilm(OUTSIDE_FILM_W_PER_M2_K));
        BoundarySeries.Builder builder = BoundarySeries.of(weather, face, indoor().over(weather));
        AshraeRain.Site site = input.rainSite();
        if (site != null) {
            requireRain(weather);
            AshraeRain.Deposition above = input.rainDeposition();
            if (above == null) {
                throw Refused.of(
                        "rainDeposition",
                        "",
                        "What stands above the wall (rainDeposition) is missing: driving rain needs it.",
                        ASSUMED);
            }
            builder.withRain(new AshraeRain(site.factor(LOW_BUILDING_M), above.factor()));
        }
        AirLeak.Tightness leak = input.leakTightness();
        if (leak != null) {
            Double height = input.leakHeightM();
            if (height == null) {
                throw Refused.of(
                        "leakHeightM", "", "The height of the connected indoor air (leakHeightM) is missing.", ASSUMED);
            }
            builder.withLeak(new AirLeak(leak, height));
        }
        Double changes = input.cavityAirChangesPerH();
        if (cavity && changes == null) {
            throw Refused.of(
                    "cavityAirChangesPerH",
                    "",
                    "A layer is ventilated; its air change (cavityAirChangesPerH) is missing. The rain-screen"
                            + " calculation gives it.",
                    ASSUMED);
        }
        BoundarySeries series = builder.done();
        notices.addAll(series.notices());
        int offset = 24 * (firstDay.getDayOfYear() - 1);
        double perHour = changes == null ? 0 : changes;
        return BoundaryClimate.of(series, offset, hour -> perHour);
    }

    private static void requireRain(HourlyWeather weather) {
        for (WeatherQuantity needed :
                List.of(WeatherQuantity.PRECIPITATION, WeatherQuantity.WIND_SPEED, WeatherQuantity.WIND_DIRECTION)) {
            if (!weather.has(needed)) {
                throw Refused.of(
                        "rainSite",
                        "",
                        "Driving rain needs " + needed.label() + "; the weather \"" + weather.source() + "\" has none.",
                        ASSUMED);
            }
        }
    }

    private IndoorClimate indoor() {
        double temperature = input.indoorC() == null ? USUAL_INDOOR_C : input.indoorC();
        HumidityClass humidityClass = input.indoor().humidityClass();
        if (humidityClass != null) {
            return new IndoorClimate.Classed(humidityClass, temperature);
        }
        return switch (input.indoor()) {
            case CONSTANT -> {
                Double humidity = input.indoorHumidityFraction();
                if (humidity == null) {
                    throw Refused.of(
                            "indoorHumidityFraction",
                            "",
                            "The indoor humidity (indoorHumidityFraction) is missing.",
                            ASSUMED);
                }
                yield new IndoorClimate.Constant(temperature, humidity);
            }
            case WINTER_CURVE -> new CurveIndoors(temperature, input.indoorCurve());
            case NORMAL_LOAD -> IndoorClimate.Continental.NORMAL;
            case HIGH_LOAD -> IndoorClimate.Continental.HIGH;
            case DESIGN_SIMPLIFIED -> new IndoorClimate.AshraeSimplified(false);
            default -> throw new IllegalStateException("no indoor climate for " + input.indoor());
        };
    }

    /** A humidity that follows the outdoor temperature. */
    private record CurveIndoors(double indoorC, List<WallMoistureInput.CurvePoint> points) implements IndoorClimate {
        CurveIndoors {
            if (points.isEmpty()) {
                throw Refused.of(
                        "indoorCurve", "", "The curve of the indoor humidity (indoorCurve) has no point.", ASSUMED);
            }
            points = points.stream()
                    .sorted(Comparator.comparingDouble(WallMoistureInput.CurvePoint::outdoorC))
                    .toList();
            for (int i = 1; i < points.size(); i++) {
                if (points.get(i).outdoorC() == points.get(i - 1).outdoorC()) {
                    throw Refused.of(
                            "indoorCurve",
                            Canonical.text(points.get(i).outdoorC()),
                            "The curve of the indoor humidity (indoorCurve) has two points at "
                                    + Canonical.text(points.get(i).outdoorC()) + " °C.",
                            ASSUMED);
                }
            }
        }

        @Override
        public double temperatureC(double outdoorDayMeanC) {
            return indoorC;
        }

        @Override
        public double vapourPressurePa(double outdoorDayMeanC, double outdoorVapourPressurePa) {
            return humidity(outdoorDayMeanC) * Iso13788Saturation.pressurePa(indoorC);
        }

        private double humidity(double outdoorC) {
            WallMoistureInput.CurvePoint before = points.get(0);
            for (WallMoistureInput.CurvePoint point : points) {
                if (outdoorC < point.outdoorC()) {
                    double span = point.outdoorC() - before.outdoorC();
                    double share = span <= 0 ? 0 : Math.max(0, (outdoorC - before.outdoorC()) / span);
                    return before.humidityFraction() + share * (point.humidityFraction() - before.humidityFraction());
                }
                before = point;
            }
            return before.humidityFraction();
        }
    }

    /** What the films rest on. */
    static Source films() {
        return FILMS;
    }
}
