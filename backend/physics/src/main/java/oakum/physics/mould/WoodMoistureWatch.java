package oakum.physics.mould;

/**
 * Judges the moisture of wood over time: 20 % of the dry mass is the design limit, more than 30 days above it and above
 * freezing is warned of, and from 28 % at 5 to 40 °C decay can start. A wet spell lasts until the wood is at 20 % again;
 * frozen days within it are not counted and do not end it.
 */
public final class WoodMoistureWatch extends HourSteps {
    /** The design limit, kg of water per kg of dry wood. */
    public static final double LIMIT_FRACTION = 0.20;

    /** From here on decay can start: the lower end of fibre saturation. */
    public static final double DECAY_FRACTION = 0.28;

    /** The longest wet spell that is not warned of, days above freezing. */
    public static final double LONGEST_SPELL_D = 30;

    private static final double COLDEST_DECAY_C = 5;
    private static final double WARMEST_DECAY_C = 40;

    private double greatest;
    private double greatestAtH;
    private double aboveLimitH;
    private double decayH;
    private double spellH;
    private double longestSpellH;

    /**
     * Adds what the wood held from the last end to this one.
     *
     * @param hoursSinceStart end of the stretch, after the last end; the first stretch begins at 0
     * @param temperatureC mean temperature of the wood, −100 to 150
     * @param moistureFraction mean water over dry mass, 0 to 2
     * @throws IllegalArgumentException where time does not go forward or a value is outside its range
     */
    public void add(double hoursSinceStart, double temperatureC, double moistureFraction) {
        walk(hoursSinceStart, temperatureC, moistureFraction, "moisture");
    }

    @Override
    void step(double startH, double lengthH, double temperatureC, double moisture) {
        if (moisture > greatest) {
            greatest = moisture;
            greatestAtH = startH + lengthH;
        }
        if (moisture > LIMIT_FRACTION) {
            aboveLimitH += lengthH;
            if (temperatureC > 0) {
                spellH += lengthH;
                longestSpellH = Math.max(longestSpellH, spellH);
            }
        } else {
            spellH = 0;
        }
        if (moisture >= DECAY_FRACTION && temperatureC >= COLDEST_DECAY_C && temperatureC <= WARMEST_DECAY_C) {
            decayH += lengthH;
        }
    }

    /** The greatest moisture so far, a fraction of the dry mass. */
    public double greatest() {
        return greatest;
    }

    /** When the greatest moisture was first there, hours since the start. */
    public double greatestAtHours() {
        return greatestAtH;
    }

    /** Hours above 20 %. */
    public double aboveLimitHours() {
        return aboveLimitH;
    }

    /** Hours at 28 % or more between 5 and 40 °C. */
    public double decayHours() {
        return decayH;
    }

    /** Hours above freezing in the longest wet spell. */
    public double longestSpellHours() {
        return longestSpellH;
    }

    /** What it comes to. */
    public WoodMoistureState state() {
        if (decayH > 0) {
            return WoodMoistureState.DECAY_CAN_START;
        }
        if (longestSpellH > 24 * LONGEST_SPELL_D) {
            return WoodMoistureState.WARNED;
        }
        return aboveLimitH > 0 ? WoodMoistureState.WATCH : WoodMoistureState.SAFE;
    }
}
