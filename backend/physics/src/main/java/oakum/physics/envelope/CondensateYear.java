package oakum.physics.envelope;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Twelve months of condensation and evaporation at all planes of an assembly (ISO 13788 clause 6.4). */
final class CondensateYear {
    /** Water thinner than this is none, kg/m². */
    static final double DRY_KG_PER_M2 = 1e-9;

    private static final int MOST_PIECES_OF_A_MONTH = 1000;

    /** One month's mean climate on both sides. */
    record Climate(MonthOfYear month, double outdoorC, double outdoorPa, double indoorC, double indoorPa) {}

    /**
     * What a month did.
     *
     * @param line the vapour line with which it began
     * @param changeKgPerM2 at every node
     * @param waterKgPerM2 at every node at its end
     * @param condensedKgPerM2 all that condensed, wherever
     * @param evaporatedKgPerM2 all that evaporated, wherever
     */
    record MonthResult(
            Climate climate,
            VapourLine line,
            List<Double> changeKgPerM2,
            List<Double> waterKgPerM2,
            double condensedKgPerM2,
            double evaporatedKgPerM2) {
        double storedKgPerM2() {
            return waterKgPerM2.stream().mapToDouble(Double::doubleValue).sum();
        }
    }

    private final VapourPath path;
    private final List<Climate> climates;

    /**
     * @param climates twelve, January first
     */
    CondensateYear(VapourPath path, List<Climate> climates) {
        this.path = path;
        this.climates = climates;
    }

    /** Twelve months from the first that condenses after the longest dry spell, beginning with so much water. */
    List<MonthResult> run(List<Double> waterKgPerM2) {
        double[] water = waterKgPerM2.stream().mapToDouble(Double::doubleValue).toArray();
        List<MonthResult> year = new ArrayList<>();
        int first = first();
        for (int k = 0; k < climates.size(); k++) {
            year.add(month(climates.get((first + k) % climates.size()), water));
        }
        return year;
    }

    /** No water anywhere. */
    List<Double> dry() {
        return Collections.nCopies(path.nodes().size(), 0.0);
    }

    private int first() {
        int n = climates.size();
        int best = 0;
        int longest = 0;
        for (int i = 0; i < n; i++) {
            if (condensesWhenDry(climates.get(i))) {
                int spell = 0;
                while (spell < n && !condensesWhenDry(climates.get((i - 1 - spell + 2 * n) % n))) {
                    spell++;
                }
                if (spell > longest) {
                    longest = spell;
                    best = i;
                }
            }
        }
        return best;
    }

    private boolean condensesWhenDry(Climate climate) {
        return !line(climate, new double[path.nodes().size()]).planes().isEmpty();
    }

    private VapourLine line(Climate climate, double[] water) {
        boolean[] wet = new boolean[water.length];
        for (int i = 0; i < water.length; i++) {
            wet[i] = water[i] > 0;
        }
        return path.line(
                climate.outdoorPa(), climate.indoorPa(), path.saturationPa(climate.outdoorC(), climate.indoorC()), wet);
    }

    /** One month; where a plane runs dry within it the month is split at that moment. */
    private MonthResult month(Climate climate, double[] water) {
        double[] before = water.clone();
        double condensed = 0;
        double evaporated = 0;
        double left = climate.month().seconds();
        VapourLine began = line(climate, water);
        VapourLine line = began;
        for (int piece = 0; left > 0; piece++) {
            if (piece == MOST_PIECES_OF_A_MONTH) {
                throw new IllegalStateException(
                        "planes keep running dry in " + climate.month().label());
            }
            double step = left;
            for (int k = 0; k < line.planes().size(); k++) {
                double rate = line.rateKgPerSM2(k);
                double held = water[line.planes().get(k)];
                if (rate < 0 && held > 0) {
                    step = Math.min(step, -held / rate);
                }
            }
            for (int k = 0; k < line.planes().size(); k++) {
                int plane = line.planes().get(k);
                double change = Math.max(step * line.rateKgPerSM2(k), -water[plane]);
                condensed += Math.max(0, change);
                evaporated += Math.max(0, -change);
                water[plane] += change;
                if (water[plane] < DRY_KG_PER_M2) {
                    evaporated += water[plane];
                    water[plane] = 0;
                }
            }
            left = step >= left ? 0 : left - step;
            if (left > 0) {
                line = line(climate, water);
            }
        }
        List<Double> changes = new ArrayList<>();
        List<Double> end = new ArrayList<>();
        for (int i = 0; i < water.length; i++) {
            changes.add(water[i] - before[i]);
            end.add(water[i]);
        }
        return new MonthResult(climate, began, changes, end, condensed, evaporated);
    }
}
