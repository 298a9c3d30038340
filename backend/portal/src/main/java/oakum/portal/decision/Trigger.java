package oakum.portal.decision;

import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * By how much one value must change before an arrow fires; within its band the arrow is quiet.
 *
 * @param path of the value; {@code [*]} stands for any row
 * @param what the value in trade words
 * @param fall the fall that is still quiet, not negative; null where no fall fires
 * @param rise the rise that is still quiet, not negative; null where no rise fires
 * @param above the value above which any change fires; null where none does
 * @param unit {@code %} of the value before, or the unit of the value itself, empty for none
 * @param atBound whether a change of exactly the bound fires, too
 */
record Trigger(
        String path,
        String what,
        @Nullable Double fall,
        @Nullable Double rise,
        @Nullable Double above,
        String unit,
        boolean atBound) {
    /** Rounding of decimal values must not decide, as a part of the bound's own unit. */
    private static final double ROUNDING = 1e-9;

    boolean watches(String valuePath) {
        return Pattern.matches(Pattern.quote(path).replace("[*]", "[\\E[^\\]]*\\Q]"), valuePath);
    }

    /**
     * Whether a change of its value fires. What appears, disappears or is no number fires always.
     *
     * @param before canonical text when it was approved, null where there was nothing
     * @param now canonical text now, null where there is nothing
     */
    boolean fires(@Nullable String before, @Nullable String now) {
        double from;
        double to;
        try {
            if (before == null || now == null) {
                return true;
            }
            from = Double.parseDouble(before);
            to = Double.parseDouble(now);
        } catch (NumberFormatException e) {
            return true;
        }
        if (above != null && to > above) {
            return true;
        }
        double change = unit.equals("%") ? 100 * (to - from) / Math.abs(from) : to - from;
        return beyond(change, rise) || beyond(-change, fall);
    }

    private boolean beyond(double change, @Nullable Double bound) {
        if (bound == null) {
            return false;
        }
        return atBound ? change >= bound - ROUNDING : change > bound + ROUNDING;
    }

    /** "flow ±10 %", "any rise of flow; fall > 10 %". */
    String text() {
        if (above != null) {
            return what + " > " + amount(above);
        }
        if (rise != null && fall != null) {
            if (rise.equals(fall)) {
                return atBound ? what + " by " + amount(rise) + " or more" : what + " ±" + amount(rise);
            }
            return oneSided("rise", rise) + "; " + oneSided("fall", fall);
        }
        return rise != null ? oneSided("rise", rise) : fall == null ? what : oneSided("fall", fall);
    }

    /** "flow: within ±10 %"; in the words of the trigger, where the band has two sides. */
    String quietText() {
        if (rise != null && rise.equals(fall)) {
            return what + ": within ±" + amount(rise);
        }
        return what + ": short of " + text();
    }

    private String oneSided(String way, double bound) {
        if (bound == 0) {
            return "any " + way + " of " + what;
        }
        return way + " of " + what + (atBound ? " by " + amount(bound) + " or more" : " > " + amount(bound));
    }

    private String amount(double bound) {
        String number = bound == Math.rint(bound) ? Long.toString((long) bound) : Double.toString(bound);
        return unit.isEmpty() ? number : number + (unit.equals("°") ? "" : " ") + unit;
    }
}
