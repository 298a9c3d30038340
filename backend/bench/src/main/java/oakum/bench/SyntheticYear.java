package oakum.bench;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import oakum.physics.hygrothermal.Climate;
import oakum.physics.hygrothermal.HourlyClimate;
import oakum.physics.moistair.Iso13788Saturation;

/**
 * A year of a cold climate that belongs to no place, hour by hour: temperature as a yearly and a daily wave with slow
 * noise, cloud by the day, rain in spells of six hours. The same seed gives the same year on every machine.
 */
final class SyntheticYear {
    static final int HOURS = 8760;
    private static final int COLUMNS = 6;
    private static final double ABSORPTANCE_OVER_FILM = 0.6 / 17;

    /** Rows of an hour: outdoor °C, outdoor Pa, sun on the wall W/m², rain on it kg/(m² s), indoor °C, indoor Pa. */
    private final double[][] rows = new double[HOURS + 1][COLUMNS];

    SyntheticYear(long seed) {
        Random random = new Random(seed);
        double slow = 0;
        double cloud = 0;
        boolean raining = false;
        for (int hour = 0; hour <= HOURS; hour++) {
            double year = -Math.cos(2 * Math.PI * (hour / 24.0 - 20) / 365);
            double ofDay = hour % 24;
            double wave = Math.sin(2 * Math.PI * (ofDay - 9) / 24);
            slow = hour == 0 ? 0 : 0.985 * slow + 0.9 * random.nextGaussian();
            if (hour % 24 == 0) {
                cloud = 0.5 - 0.5 * Math.cos(Math.PI * random.nextDouble());
            }
            if (hour % 6 == 0) {
                raining = random.nextDouble() < 0.05;
            }
            double outdoor = 5.5 + 14 * year + 4 * wave + slow;
            double humidity = between(0.25, 0.98, 0.74 - 0.08 * year - 0.12 * wave + 0.05 * random.nextGaussian());
            double sun = Math.max(0, Math.sin(Math.PI * (ofDay - 6) / 12));
            double amount = -0.12 * Math.log(1 - random.nextDouble());
            double indoor = 21 + 1.5 * between(0, 1, (outdoor - 15) / 10);
            double[] row = rows[hour];
            row[0] = outdoor;
            row[1] = humidity * Iso13788Saturation.pressurePa(outdoor);
            row[2] = 500 * sun * (1 - 0.75 * cloud) * (1 - 0.25 * year);
            row[3] = raining && outdoor > 0 ? amount / 3600 : 0;
            row[4] = indoor;
            row[5] = between(0.35, 0.60, 0.35 + 0.25 * (outdoor + 10) / 30) * Iso13788Saturation.pressurePa(indoor);
        }
    }

    private static double between(double low, double high, double value) {
        return Math.max(low, Math.min(high, value));
    }

    /** The year as a wall sees it; a new object for every run. */
    Climate climate(double cavityAirChangesPerHour) {
        return new HourlyClimate((hour, s) -> {
            double[] row = rows[hour % HOURS];
            s.outdoorTemperatureC = row[0];
            s.outdoorEquivalentC = row[0] + ABSORPTANCE_OVER_FILM * row[2];
            s.outdoorVapourPa = row[1];
            s.rainKgPerM2S = row[3];
            s.indoorTemperatureC = row[4];
            s.indoorVapourPa = row[5];
            s.cavityAirChangesPerHour = cavityAirChangesPerHour;
        });
    }

    /** Writes the rows as little-endian doubles, the form that the reference kernels read. */
    void write(Path file) throws IOException {
        ByteBuffer bytes =
                ByteBuffer.allocate(rows.length * COLUMNS * Double.BYTES).order(ByteOrder.LITTLE_ENDIAN);
        for (double[] row : rows) {
            for (double value : row) {
                bytes.putDouble(value);
            }
        }
        Files.write(file, bytes.array());
    }
}
