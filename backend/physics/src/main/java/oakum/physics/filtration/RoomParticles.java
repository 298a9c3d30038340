package oakum.physics.filtration;

/**
 * Fine particles in a house taken as one well-mixed room: what comes in through cracks and ventilation and from indoors,
 * against what leaves, settles and is filtered out.
 *
 * @param outdoorUgPerM3 concentration outdoors
 * @param volumeM3 of air in the house, above 0
 * @param infiltrationPerH air changes through cracks
 * @param penetrationFraction share of outdoor particles that survive the cracks
 * @param ventilationPerH air changes of the ventilation's supply
 * @param supplyFilterFraction efficiency of the filter in that supply
 * @param depositionPerH rate of settling on surfaces
 * @param recirculatedM3PerS airflow through the recirculating filter, weighted by its running time
 * @param filterFraction efficiency of that filter
 * @param emissionUgPerH from cooking and living
 */
public record RoomParticles(
        double outdoorUgPerM3,
        double volumeM3,
        double infiltrationPerH,
        double penetrationFraction,
        double ventilationPerH,
        double supplyFilterFraction,
        double depositionPerH,
        double recirculatedM3PerS,
        double filterFraction,
        double emissionUgPerH) {

    /** How fast a cloud of particles goes: the sum of all losses, per hour. */
    public double lossPerH() {
        return infiltrationPerH + ventilationPerH + depositionPerH + filterCleanAirM3PerS() * 3600 / volumeM3;
    }

    /** What the room settles at; with no loss at all it never settles and the answer is infinite. */
    public double steadyUgPerM3() {
        double gain =
                (penetrationFraction * infiltrationPerH + (1 - supplyFilterFraction) * ventilationPerH) * outdoorUgPerM3
                        + emissionUgPerH / volumeM3;
        return gain / lossPerH();
    }

    /**
     * Concentration after a time.
     *
     * @param startUgPerM3 at the beginning
     * @param hours since then, at least 0
     */
    public double afterUgPerM3(double startUgPerM3, double hours) {
        double steady = steadyUgPerM3();
        return steady + (startUgPerM3 - steady) * Math.exp(-lossPerH() * hours);
    }

    /** Particle-free air that the recirculating filter amounts to. */
    public double filterCleanAirM3PerS() {
        return filterFraction * recirculatedM3PerS;
    }

    /**
     * Clean-air delivery from a decay test in a closed room.
     *
     * @param volumeM3 of the room
     * @param decayWithPerH rate with the filter running
     * @param decayWithoutPerH rate without
     */
    public static double deliveryFromDecayM3PerS(double volumeM3, double decayWithPerH, double decayWithoutPerH) {
        return volumeM3 * (decayWithPerH - decayWithoutPerH) / 3600;
    }

    /**
     * Equivalent clean air against infection (form of ASHRAE 241, from memory): outdoor air counts whole, filtered air by
     * the filter's efficiency for infectious aerosol.
     *
     * @param outdoorM3PerS outdoor airflow
     * @param filteredM3PerS recirculated airflow through the filter
     * @param aerosolFraction efficiency for infectious aerosol
     */
    public static double equivalentCleanAirM3PerS(double outdoorM3PerS, double filteredM3PerS, double aerosolFraction) {
        return outdoorM3PerS + aerosolFraction * filteredM3PerS;
    }
}
