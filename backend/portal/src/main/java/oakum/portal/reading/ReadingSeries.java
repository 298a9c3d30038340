package oakum.portal.reading;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Readings gathered into buckets of equal length, for a chart.
 *
 * @param from start of the first whole bucket
 * @param to end of the last whole bucket
 * @param bucketS length of a bucket in seconds; from one day on, buckets are days of the house
 * @param source {@code readings}, or {@code hours} where the hourly values were enough
 */
public record ReadingSeries(
        Instant from, Instant to, long bucketS, String zone, String source, List<SensorSeries> series) {

    /**
     * The buckets of one sensor; a bucket without readings is left out.
     *
     * @param limits indoor humidity: the most that the house record allows at the outdoor temperature of each bucket;
     *     else, and where no outdoor temperature is read, empty
     * @param persistence how long it stayed beyond the limit of its rule; null where that was not asked or no rule is kept
     */
    public record SensorSeries(
            Sensor sensor,
            List<ReadingBucket> buckets,
            @Nullable Persistence persistence,
            List<LimitPoint> limits) {}

    /** A limit of its own at the start of a bucket, in the sensor's unit; null where none is known. */
    public record LimitPoint(Instant at, @Nullable Double limit) {}

    /**
     * One bucket.
     *
     * @param at its start
     * @param count readings in it
     */
    public record ReadingBucket(Instant at, long count, double min, double mean, double max) {}
}
