package oakum.physics.moistair;

import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Source;
import org.jspecify.annotations.Nullable;

/** The air pressure of a place, measured or from its altitude: the input fields {@code pressurePa} and {@code altitudeM}. */
public final class PlacePressure {
    private static final Source ATMOSPHERE =
            Source.fromMemory("ASHRAE Fundamentals ch. 1, eq. 3 (ICAO standard atmosphere)");

    private PlacePressure() {}

    /**
     * Takes exactly one of the two.
     *
     * @param pressurePa as a barometer on the spot shows it
     * @param altitudeM in whose place the standard atmosphere is taken
     * @throws Refused where both or neither are given
     */
    public static double pressurePa(@Nullable Double pressurePa, @Nullable Double altitudeM) {
        if (pressurePa != null && altitudeM != null) {
            throw Refused.of(
                    "altitudeM",
                    Canonical.text(altitudeM),
                    "Air pressure and altitude are both given; one of them says it: leave the other out.",
                    ATMOSPHERE);
        }
        if (pressurePa != null) {
            return pressurePa;
        }
        if (altitudeM != null) {
            return StandardAtmosphere.pressurePa(altitudeM);
        }
        throw Refused.of("pressurePa", "", "Give the air pressure, or the altitude in its place.", ATMOSPHERE);
    }
}
