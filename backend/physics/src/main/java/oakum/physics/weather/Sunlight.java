package oakum.physics.weather;

import static oakum.physics.weather.WeatherQuantity.DIFFUSE_HORIZONTAL;
import static oakum.physics.weather.WeatherQuantity.DIRECT_NORMAL;
import static oakum.physics.weather.WeatherQuantity.GLOBAL_HORIZONTAL;

import java.util.List;
import java.util.Map;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Source;
import org.jspecify.annotations.Nullable;

/**
 * Completes global, direct and diffuse from those of them that are given: global = direct · cos z + diffuse, and where
 * only the global is given its diffuse share after Erbs. Direct light never exceeds that of very clear air; what is more
 * is left to the diffuse part, so that the global stays as it was given.
 */
final class Sunlight {
    private static final Source SPLIT =
            Source.fromMemory("Erbs, Klein and Duffie 1982, diffuse share by hourly clearness");
    private static final Source SUM = Source.fromMemory("global = direct · cos z + diffuse, by definition");

    /** Optical depths of very clear air, so that their direct light is a ceiling (common practice). */
    private static final double CLEAREST_DIRECT_DEPTH = 0.26;

    private static final double CLEAREST_DIFFUSE_DEPTH = 2.7;

    private Sunlight() {}

    static void complete(SunCourse sun, Map<WeatherQuantity, double[]> hourly, List<Notice> notices) {
        double[] global = hourly.get(GLOBAL_HORIZONTAL);
        double[] direct = hourly.get(DIRECT_NORMAL);
        double[] diffuse = hourly.get(DIFFUSE_HORIZONTAL);
        if (global == null) {
            if (direct != null && diffuse != null) {
                hourly.put(GLOBAL_HORIZONTAL, global(sun, direct, diffuse));
                notices.add(note(
                        "global-computed",
                        GLOBAL_HORIZONTAL,
                        "Global irradiance was computed from direct and diffuse.",
                        SUM));
            }
        } else if (direct == null || diffuse == null) {
            split(sun, global, direct, diffuse, hourly, notices);
        }
    }

    private static double[] global(SunCourse sun, double[] direct, double[] diffuse) {
        double[] sum = new double[sun.hours()];
        for (int i = 0; i < sum.length; i++) {
            sum[i] = diffuse[i] + direct[i] * cosZenith(sun, i);
        }
        return sum;
    }

    private static void split(
            SunCourse sun,
            double[] global,
            double @Nullable [] direct,
            double @Nullable [] diffuse,
            Map<WeatherQuantity, double[]> hourly,
            List<Notice> notices) {
        double[] newDirect = new double[sun.hours()];
        double[] newDiffuse = new double[sun.hours()];
        int brighter = 0;
        for (int i = 0; i < newDirect.length; i++) {
            double cos = cosZenith(sun, i);
            if (direct != null) {
                newDirect[i] = direct[i];
                newDiffuse[i] = Math.max(0, global[i] - direct[i] * cos);
                continue;
            }
            double sky = diffuse == null ? byClearness(sun, i, global[i], cos) : Math.min(diffuse[i], global[i]);
            brighter += diffuse != null && diffuse[i] > global[i] ? 1 : 0;
            newDirect[i] = Math.min(clearest(sun, i), beam(global[i] - sky, cos));
            newDiffuse[i] = global[i] - newDirect[i] * cos;
        }
        hourly.put(DIRECT_NORMAL, newDirect);
        hourly.put(DIFFUSE_HORIZONTAL, newDiffuse);
        if (brighter > 0) {
            notices.add(note(
                    "diffuse-above-global",
                    DIFFUSE_HORIZONTAL,
                    "In " + brighter + " hours the diffuse irradiance was above the global; the global was taken for"
                            + " both.",
                    SUM));
        }
        notices.add(
                diffuse == null && direct == null
                        ? note(
                                "sun-split",
                                DIRECT_NORMAL,
                                "Only global irradiance is given; it was split into direct and diffuse by its"
                                        + " clearness.",
                                SPLIT)
                        : note(
                                "sun-completed",
                                DIRECT_NORMAL,
                                "Direct or diffuse irradiance was computed from the global.",
                                SUM));
    }

    private static double byClearness(SunCourse sun, int hour, double global, double cosZenith) {
        double above = sun.extraterrestrialNormalWPerM2(hour) * cosZenith;
        return above <= 0 ? global : global * SolarRadiation.diffuseFraction(global / above);
    }

    private static double beam(double onLevelGround, double cosZenith) {
        return cosZenith <= 0 ? 0 : Math.max(0, onLevelGround) / cosZenith;
    }

    private static double cosZenith(SunCourse sun, int hour) {
        return Math.max(0, sun.position(hour).cosZenith());
    }

    /** Direct light of very clear air. */
    private static double clearest(SunCourse sun, int hour) {
        SolarPosition position = sun.position(hour);
        if (position.elevationDeg() <= 0) {
            return 0;
        }
        double depth = CLEAREST_DIRECT_DEPTH
                * Math.pow(
                        SolarRadiation.airMass(position.elevationDeg()),
                        ClearSky.Edition.HANDBOOK_2013.direct(CLEAREST_DIRECT_DEPTH, CLEAREST_DIFFUSE_DEPTH));
        return sun.extraterrestrialNormalWPerM2(hour) * Math.exp(-depth);
    }

    private static Notice note(String code, WeatherQuantity field, String sentence, Source source) {
        return Notice.note(code, field.name(), sentence, source);
    }
}
