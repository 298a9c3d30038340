package oakum.physics.rainscreen;

/**
 * What a cavity stands in.
 *
 * @param outdoorC air outdoors, −60 to 60
 * @param solAirC temperature that sun and air give the cladding together
 * @param indoorC air of the house
 * @param outerWPerM2K from the cavity air through the cladding to the sol-air temperature, above 0
 * @param innerWPerM2K from the cavity air through the wall to the house, 0 or more
 * @param windPa pressure of the wind, bottom opening less top opening
 * @param pressureFraction air pressure of the place over that at sea level, 1 at sea level
 */
public record CavityClimate(
        double outdoorC,
        double solAirC,
        double indoorC,
        double outerWPerM2K,
        double innerWPerM2K,
        double windPa,
        double pressureFraction) {

    /** Temperature that the cavity air comes to where it stands still. */
    public double restC() {
        return (outerWPerM2K * solAirC + innerWPerM2K * indoorC) / (outerWPerM2K + innerWPerM2K);
    }
}
