package oakum.physics.hygrothermal;

import java.util.List;
import java.util.Map;
import java.util.Set;
import oakum.physics.moistair.BelowFreezing;
import oakum.physics.weather.HourlyWeather;
import oakum.physics.weather.OpenData;
import oakum.physics.weather.Place;
import oakum.physics.weather.WeatherColumn;
import oakum.physics.weather.WeatherColumn.Given;
import oakum.physics.weather.WeatherColumn.Meaning;
import oakum.physics.weather.WeatherTable;

/** Sensors of the Finnish walls and attics, by the hour. Humidity is counted over water, as the sensors give it. */
final class MeasuredSeries {
    private static final String FOLDER = "envelope-trh-finland/";
    private static final double OFFSET_H = 2;

    private static final List<WeatherColumn> SENSOR = List.of(
            new WeatherColumn("T", Meaning.AIR_TEMPERATURE, Given.CELSIUS),
            new WeatherColumn("RH", Meaning.RELATIVE_HUMIDITY, Given.PERCENT));

    private MeasuredSeries() {}

    /** One sensor inside a house or its structure. */
    static HourlyWeather sensor(Place place, String name) {
        WeatherTable map = new WeatherTable(
                1,
                2,
                ',',
                '.',
                List.of("t_UTC+2"),
                "yyyy-MM-dd HH:mm:ss",
                OFFSET_H,
                WeatherTable.Dates.AS_DATED,
                WeatherTable.Sums.BEFORE_STAMP,
                BelowFreezing.OVER_WATER,
                Set.of(),
                SENSOR);
        return map.read(place, name, OpenData.lines(FOLDER + name + ".csv.gz"));
    }

    /** Measured and computed side by side. */
    static final class Comparison {
        private final String name;
        private final int from;
        private int hours;
        private double sumT;
        private double squaresT;
        private double sumH;
        private double squaresH;

        /**
         * Begins.
         *
         * @param from first hour that counts: the hours before are the run-in
         */
        Comparison(String name, int from) {
            this.name = name;
            this.from = from;
        }

        void add(int hour, double computedC, double measuredC, double computedHumidity, double measuredHumidity) {
            if (hour < from) {
                return;
            }
            hours++;
            double t = computedC - measuredC;
            double h = 100 * (computedHumidity - measuredHumidity);
            sumT += t;
            squaresT += t * t;
            sumH += h;
            squaresH += h * h;
        }

        String name() {
            return name;
        }

        int hours() {
            return hours;
        }

        double biasK() {
            return sumT / hours;
        }

        double rmseK() {
            return Math.sqrt(squaresT / hours);
        }

        double biasPoints() {
            return sumH / hours;
        }

        double rmsePoints() {
            return Math.sqrt(squaresH / hours);
        }
    }

    /** Names that the data has no sun, wind and rain for. */
    static final Map<String, Place> PLACES = Map.of(
            "R1", new Place("Tampere", 61.5, 23.8, 110, OFFSET_H),
            "R3", new Place("Espoo", 60.2, 24.7, 30, OFFSET_H),
            "R4", new Place("Tampere", 61.5, 23.8, 110, OFFSET_H),
            "R7", new Place("Vantaa", 60.3, 25.0, 40, OFFSET_H));
}
