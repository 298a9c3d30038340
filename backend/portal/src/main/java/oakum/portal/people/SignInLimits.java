package oakum.portal.people;

import io.github.bucket4j.Bucket;
import io.github.bucket4j.EstimationProbe;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import oakum.portal.http.Problem;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;

/**
 * Slows down guessing: counts failures only, for each account from each address and for each address alone, so that nobody
 * can lock another person out. Each instance counts for itself.
 */
@Component
class SignInLimits {
    /** Failures at once, and as many again spread over the refill time. */
    static final int FAILURES_PER_ACCOUNT = 5;

    static final int FAILURES_PER_ADDRESS = 30;
    private static final Duration REFILL = Duration.ofMinutes(5);
    /** Beyond it the buckets that were not used for longest are forgotten. */
    private static final int REMEMBERED = 10_000;

    private final Map<String, Bucket> buckets = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Bucket> eldest) {
            return size() > REMEMBERED;
        }
    };

    /** Refuses while there were too many failures, before a password or token is even looked at. */
    void check(String account, String address) {
        refuseIfEmpty(bucket(address, FAILURES_PER_ADDRESS));
        refuseIfEmpty(bucket(account + " " + address, FAILURES_PER_ACCOUNT));
    }

    void check(String address) {
        refuseIfEmpty(bucket(address, FAILURES_PER_ADDRESS));
    }

    void failed(String account, String address) {
        bucket(account + " " + address, FAILURES_PER_ACCOUNT).tryConsume(1);
        failed(address);
    }

    void failed(String address) {
        bucket(address, FAILURES_PER_ADDRESS).tryConsume(1);
    }

    private static void refuseIfEmpty(Bucket bucket) {
        EstimationProbe probe = bucket.estimateAbilityToConsume(1);
        if (!probe.canBeConsumed()) {
            long seconds = TimeUnit.NANOSECONDS.toSeconds(probe.getNanosToWaitForRefill()) + 1;
            throw new Problem(
                            HttpStatus.TOO_MANY_REQUESTS,
                            "too-many-failures",
                            "Too many failed tries from here. Wait " + seconds + " seconds, then try again.")
                    .header(HttpHeaders.RETRY_AFTER, Long.toString(seconds));
        }
    }

    private synchronized Bucket bucket(String key, int failures) {
        return buckets.computeIfAbsent(
                key,
                k -> Bucket.builder()
                        .addLimit(limit -> limit.capacity(failures).refillGreedy(failures, REFILL))
                        .build());
    }
}
