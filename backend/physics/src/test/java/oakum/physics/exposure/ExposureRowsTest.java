package oakum.physics.exposure;

import static oakum.physics.checkrow.CheckRow.abs;
import static oakum.physics.checkrow.CheckRow.rel;
import static oakum.physics.checkrow.CheckRow.row;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import oakum.physics.calculation.Notice;
import oakum.physics.moistair.BelowFreezing;
import oakum.physics.moistair.Iso13788Saturation;
import oakum.physics.weather.SkyTemperature;
import org.junit.jupiter.api.Test;

/** Rain, indoor air, leaking air and the sky against the reference sheet. */
class ExposureRowsTest {
    private static final String COMPUTED = "computed by independent code; equations from memory";

    @Test
    void rain_on_a_wall() {
        double factor = AshraeRain.Site.MEDIUM.factor(6);
        RainOnWall ashrae = new AshraeRain(factor, AshraeRain.Deposition.LOW_ROOF.factor());

        row("RN-1", COMPUTED)
                .near(ashrae.kgPerM2H(5, 0, 2, 10), 1.00, abs(1e-12))
                .near(AshraeRain.ENTERING_FRACTION * ashrae.kgPerM2H(5, 0, 2, 10), 0.0100, abs(1e-12));
        row("RN-2", COMPUTED).near(ashrae.kgPerM2H(5, 120, 2, 10), 0, abs(0));
        double roughness = IsoRain.Land.FARM.roughness(6);
        row("RN-3", COMPUTED)
                .near(IsoRain.freeFieldKgPerM2H(5, 0, 2), 2.0575, abs(0.001))
                .near(roughness, 0.9096, abs(0.001))
                .near(new IsoRain(roughness, 1, 1, 0.5).kgPerM2H(5, 0, 2, 10), 0.9358, abs(0.001));
        row("RN-4", COMPUTED)
                .near(IsoRain.Land.SUBURB.roughness(3), .7224, abs(0.0005))
                .near(IsoRain.Land.SUBURB.roughness(6), .7224, abs(0.0005))
                .near(IsoRain.Land.TOWN.roughness(10), .6654, abs(0.0005));
        // a year's rain in the open goes on the wall through the same factors
        row("RN-5", "open digest on driving rain, seen")
                .near(new IsoRain(0.7, 1, 0.5, 0.5).onWall(6.8), 1.2, abs(0.05));
    }

    @Test
    void snow_drives_no_water_into_a_wall() {
        assertThat(new AshraeRain(1, 1).kgPerM2H(5, 0, 2, -0.1)).isZero();
    }

    private static IndoorClimateClass.Input house(double airChangePerH) {
        return new IndoorClimateClass.Input(
                -5, 0.8, BelowFreezing.OVER_ICE, 20, HumidityClass.UNKNOWN, 450, airChangePerH, 3, false);
    }

    @Test
    void indoor_air_by_what_people_give_off() {
        var standard = IndoorClimateClass.CALCULATION.calculate(house(0.2));
        var airtight = IndoorClimateClass.CALCULATION.calculate(house(0.1));

        row("IN-1", COMPUTED)
                .near(standard.output().outdoorVapourPa(), 320.9, rel(0.01))
                .near(
                        standard.output().intermediateVapourPa()
                                - standard.output().outdoorVapourPa(),
                        881,
                        rel(0.01))
                .near(standard.output().intermediateVapourPa(), 1202, rel(0.01))
                .near(standard.output().intermediateFraction(), 0.48, rel(0.01));
        assertThat(standard.notices()).isEmpty();
        row("IN-2", COMPUTED)
                .near(airtight.output().intermediateVapourPa(), 2084, rel(0.01))
                .near(airtight.output().intermediateFraction(), 0.83, rel(0.01))
                .exactly(
                        airtight.notices().stream().map(Notice::code).toList(),
                        java.util.List.of("ventilation-missing"));
        assertThat(airtight.notices().get(0).sentence()).startsWith("Ventilation missing");
    }

    @Test
    void the_simplified_humidity_follows_the_cold() {
        double[] outdoor = {-15, -10, 0, 10, 20};
        double[] printed = {.40, .40, .50, .60, .70};
        for (int i = 0; i < outdoor.length; i++) {
            assertThat(AshraeIndoor.simplifiedHumidity(outdoor[i])).isCloseTo(printed[i], within(1e-12));
        }
        assertThat(AshraeIndoor.temperatureC(30, false)).isCloseTo(32.8, within(1e-12));
        assertThat(AshraeIndoor.temperatureC(30, true)).isEqualTo(23.9);
        // monthly values of the reference climate, class 3
        assertThat(HumidityClass.UNKNOWN.excessPa(5)).isCloseTo(1217.8 - 610.3, within(0.1));
        assertThat(HumidityClass.UNKNOWN.excessPa(20)).isZero();
        assertThat(HumidityClass.UNKNOWN.excessPa(-10)).isEqualTo(810);
        assertThat(AshraeIndoor.generationKgPerS(1)).isCloseTo(0.93e-4, within(0.005e-4));
        assertThat(AshraeIndoor.generationKgPerS(6) * 86_400).isCloseTo(17, within(1e-9));
    }

    @Test
    void air_that_leaks_through_a_wall_wets_a_cold_plane() {
        AirLeak leak = new AirLeak(AirLeak.Tightness.ONE, 5);
        double flow = leak.airflowM3PerSM2(20, -10);
        double vapour = 0.5 * Iso13788Saturation.pressurePa(20);
        double wetting = AirLeak.wettingKgPerM2S(flow, 20, vapour, -8);

        row("AL-1", COMPUTED)
                .near(leak.stackPa(20, -10), 3.37, rel(0.01))
                .near(flow * 3600, .01347, rel(0.01))
                .near(1000 * Iso13788Saturation.vapourDensityKgPerM3(20, vapour), 8.63, rel(0.01))
                .near(
                        1000 * Iso13788Saturation.vapourDensityKgPerM3(-8, Iso13788Saturation.pressurePa(-8)),
                        2.53,
                        rel(0.01))
                .near(wetting * 3600 * 1000, 0.0822, rel(0.01))
                .near(wetting * 86_400 * 1000, 1.97, rel(0.01));
        assertThat(leak.stackPa(20, 25)).isZero();
        assertThat(AirLeak.wettingKgPerM2S(flow, 20, vapour, 15)).isZero();
    }

    @Test
    void sun_warms_and_a_clear_sky_cools_a_face() {
        double skyC = SkyTemperature.clearFromAirC(0);

        row("SO-1", COMPUTED).near(EquivalentTemperature.equivalentC(30, 0.7 * 500, 0, 17), 50.6, abs(0.1));
        row("SO-2", COMPUTED)
                .near(skyC + 273.15, 249.2, abs(0.2))
                .near(EquivalentTemperature.skyLossWPerM2(0, skyC, 0.9, 0.5), 43.6, abs(0.2));
    }
}
