package oakum.portal.weather;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import oakum.physics.weather.HourlyWeather;
import oakum.physics.weather.WeatherQuantity;

/** The hours of a weather as they are kept: to the last bit, so that their hash stays theirs. */
final class PackedHours {
    private PackedHours() {}

    static byte[] pack(HourlyWeather weather, List<WeatherQuantity> quantities) {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (DataOutputStream out = new DataOutputStream(new GZIPOutputStream(packed, 1 << 14))) {
            for (WeatherQuantity quantity : quantities) {
                for (double value : weather.values(quantity)) {
                    out.writeDouble(value);
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return packed.toByteArray();
    }

    static Map<WeatherQuantity, double[]> unpack(byte[] packed, List<WeatherQuantity> quantities, int hours) {
        Map<WeatherQuantity, double[]> values = new EnumMap<>(WeatherQuantity.class);
        try (DataInputStream in = new DataInputStream(new GZIPInputStream(new ByteArrayInputStream(packed), 1 << 14))) {
            for (WeatherQuantity quantity : quantities) {
                double[] hourly = new double[hours];
                for (int i = 0; i < hours; i++) {
                    hourly[i] = in.readDouble();
                }
                values.put(quantity, hourly);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return values;
    }
}
