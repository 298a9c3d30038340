package oakum.physics.material;

/** A measured isotherm: straight between (0, 0), the points, and the water at 100 % relative humidity. */
final class SorptionTable implements Sorption {
    private final double[] humidity;
    private final double[] water;

    /**
     * @param humidityFraction rising, between 0 and 1
     * @param waterKgPerM3 not falling, as many
     * @param saturationKgPerM3 at least the last of them
     */
    SorptionTable(double[] humidityFraction, double[] waterKgPerM3, double saturationKgPerM3) {
        int points = humidityFraction.length;
        humidity = new double[points + 2];
        water = new double[points + 2];
        System.arraycopy(humidityFraction, 0, humidity, 1, points);
        System.arraycopy(waterKgPerM3, 0, water, 1, points);
        humidity[points + 1] = 1;
        water[points + 1] = saturationKgPerM3;
    }

    @Override
    public double waterKgPerM3(double humidityFraction) {
        int i = piece(humidityFraction);
        return water[i] + slope(i) * (humidityFraction - humidity[i]);
    }

    @Override
    public double slopeKgPerM3(double humidityFraction) {
        return slope(piece(humidityFraction));
    }

    @Override
    public double humidityFraction(double waterKgPerM3) {
        for (int i = 1; i < water.length; i++) {
            if (waterKgPerM3 <= water[i] && water[i] > water[i - 1]) {
                return humidity[i - 1] + (waterKgPerM3 - water[i - 1]) / slope(i - 1);
            }
        }
        return waterKgPerM3 > 0 ? 1 : 0;
    }

    @Override
    public double saturationKgPerM3() {
        return water[water.length - 1];
    }

    private int piece(double humidityFraction) {
        int i = 0;
        while (i < humidity.length - 2 && humidityFraction >= humidity[i + 1]) {
            i++;
        }
        return i;
    }

    private double slope(int i) {
        return (water[i + 1] - water[i]) / (humidity[i + 1] - humidity[i]);
    }
}
