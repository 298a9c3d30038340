package oakum.portal.site;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/** Why a row keeps a cover check shut, in one line; pure. */
final class Stops {
    private Stops() {}

    /** The reason that stops signing because of this row, or null where none does. */
    static @Nullable String of(CheckRow row, List<GivenAnswer> answers) {
        GivenAnswer counting = GivenAnswer.counting(answers).orElse(null);
        if (counting == null) {
            return "Nobody has looked yet.";
        }
        if (counting.acceptance() != null) {
            return null;
        }
        if (counting.contradictedIn(answers)) {
            return "Two people answered differently; look once more.";
        }
        return switch (counting.judged()) {
            case NOT_HERE -> null;
            case NOT_RIGHT -> notRight(row, counting);
            case RIGHT -> photosMissing(row, counting);
        };
    }

    /** Every row that stops signing. */
    static List<RowStop> of(List<CheckRow> rows, java.util.Map<String, List<GivenAnswer>> answers) {
        List<RowStop> stops = new ArrayList<>();
        rows.stream().sorted(Comparator.comparingInt(CheckRow::position)).forEach(row -> {
            String reason = of(row, answers.getOrDefault(row.id(), List.of()));
            if (reason != null) {
                stops.add(new RowStop(row.id(), row.lookAt(), row.place(), reason));
            }
        });
        return stops;
    }

    static String notRight(CheckRow row, GivenAnswer counting) {
        CheckRow.Asked number = row.number();
        Double value = counting.value();
        Double limit = number == null || value == null ? null : number.brokenBy(value);
        if (number == null || value == null || limit == null) {
            return counting.note().isBlank() ? "Not right." : "Not right: " + counting.note();
        }
        return "%s is %s, the limit is %s."
                .formatted(capital(number.quantity()), text(number.unit(), value), text(number.unit(), limit));
    }

    private static @Nullable String photosMissing(CheckRow row, GivenAnswer counting) {
        int least = row.photoRule().least();
        int here = counting.photos().size();
        return here >= least
                ? null
                : "Photos are missing: " + row.photoRule().label() + "; " + (here == 0 ? "none" : "only " + here)
                        + " here.";
    }

    /** A value as people read it: "19.4 %". */
    static String text(Unit unit, double value) {
        Unit.Shown shown = unit.si();
        String number =
                String.format(Locale.ROOT, "%." + shown.digits() + "f", value * shown.factor() + shown.offset());
        return shown.symbol().isEmpty() ? number : number + " " + shown.symbol();
    }

    private static String capital(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }
}
