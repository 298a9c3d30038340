package oakum.portal.aftercare;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A filter to be followed.
 *
 * @param id names it in its house: {@code return}
 * @param inHouse where it is in the house
 * @param size its exact nominal size, as on its frame: 16×25×4
 * @param count filters side by side
 * @param shelfPlace where spares lie
 * @param designHighPa clean drop at high airflow, by design
 * @param cleanHighPa clean drop at high airflow as it was left, the clean mark; null takes both drops from the filter's
 *     signed drop sheet
 * @param cleanLowPa the same at low airflow
 * @param freeStaticPa what the fan's static limit leaves for the filter at high airflow
 * @param dropSensor key of the sensor of its pressure drop
 * @param flowSensor key of the sensor of its airflow
 */
public record NewFilter(
        String id,
        String inHouse,
        String size,
        int count,
        String grade,
        @Nullable String shelfPlace,
        LocalDate fittedOn,
        double designHighPa,
        double designLowPa,
        @Nullable Double cleanHighPa,
        @Nullable Double cleanLowPa,
        double highFlowM3PerS,
        double lowFlowM3PerS,
        @Nullable Double freeStaticPa,
        @Nullable String dropSensor,
        @Nullable String flowSensor) {}
