package oakum.portal.commissioning;

import java.time.Instant;
import oakum.physics.calculation.Verdict;
import org.jspecify.annotations.Nullable;

/**
 * A setting-to-work sheet in a list.
 *
 * @param sheet its key in addresses
 * @param verdict of the latest as-left measurement, else of the latest as-found one; null where nothing was measured
 * @param signed whether that measurement is signed
 */
public record SheetListed(
        String sheet,
        String title,
        int measurementCount,
        @Nullable Occasion occasion,
        @Nullable Verdict verdict,
        @Nullable String verdictLabel,
        @Nullable Instant takenAt,
        boolean signed) {}
