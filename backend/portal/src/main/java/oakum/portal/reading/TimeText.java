package oakum.portal.reading;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.time.temporal.ChronoField;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAccessor;
import java.time.zone.ZoneOffsetTransition;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Reads the time of a reading. Text without an offset needs a zone. In the hour that a clock change repeats, the order
 * of the rows tells which of the two passes is meant; where it cannot tell, and in the hour that a clock change skips,
 * the time is refused.
 */
final class TimeText {
    static final String EPOCH_SECONDS = "epoch-s";
    static final String EPOCH_MILLISECONDS = "epoch-ms";

    private static final Pattern HOUR_24 = Pattern.compile("(?<![\\d:])24:00(:00)?(?!\\d)");
    private static final DateTimeFormatter ISO = new DateTimeFormatterBuilder()
            .appendPattern("uuuu-MM-dd'T'HH:mm[:ss")
            .appendFraction(ChronoField.NANO_OF_SECOND, 0, 9, true)
            .appendPattern("][XXX][XX]")
            .toFormatter(Locale.ROOT)
            .withResolverStyle(ResolverStyle.STRICT);

    private final @Nullable String format;
    private final DateTimeFormatter formatter;
    private final UnaryOperator<String> prepare;
    private final @Nullable ZoneId zone;

    /**
     * A reader of times.
     *
     * @param format null for ISO 8601 (with {@code T} or a blank), {@code epoch-s}, {@code epoch-ms}, or a pattern of
     *     {@link DateTimeFormatter} with {@code uuuu} or {@code yyyy} for the year
     * @param zone of times that carry no offset
     * @throws IllegalArgumentException where the pattern is none
     */
    TimeText(@Nullable String format, @Nullable ZoneId zone) {
        this.format = format;
        this.zone = zone;
        String pattern = isEpoch(format) ? null : format;
        // strict resolving knows the year of an era only with the era, hence uuuu
        this.formatter = pattern == null
                ? ISO
                : DateTimeFormatter.ofPattern(pattern.replace('y', 'u'), Locale.ROOT)
                        .withResolverStyle(ResolverStyle.STRICT);
        this.prepare = pattern != null
                ? UnaryOperator.identity()
                : text -> text.length() > 10 && text.charAt(10) == ' '
                        ? text.substring(0, 10) + 'T' + text.substring(11)
                        : text;
    }

    /** What came before in the same series: tells the two passes of a repeated hour apart. */
    static final class Order {
        private @Nullable Instant last;
        private @Nullable Duration step;

        private void note(Instant at) {
            if (last != null && !at.equals(last)) {
                step = Duration.between(last, at);
            }
            last = at;
        }

        /** The one pass that goes on from the rows before in about their step, forwards or backwards. */
        private @Nullable Instant goesOn(Instant first, Instant second) {
            if (last == null || step == null) {
                return null;
            }
            Duration most = step.abs().multipliedBy(2);
            return List.of(first, second).stream()
                    .filter(at -> !at.equals(last) && Duration.between(last, at).isNegative() == step.isNegative())
                    .filter(at -> Duration.between(last, at).abs().compareTo(most) <= 0)
                    .min((a, b) -> Duration.between(last, a)
                            .abs()
                            .compareTo(Duration.between(last, b).abs()))
                    .orElse(null);
        }
    }

    /**
     * Reads one time.
     *
     * @param order what came before in this series; noted here
     * @throws Unreadable with the reason
     */
    Instant parse(String text, Order order) throws Unreadable {
        Instant at = read(text.strip(), order).truncatedTo(ChronoUnit.MICROS);
        order.note(at);
        return at;
    }

    private Instant read(String text, Order order) throws Unreadable {
        if (text.isEmpty()) {
            throw new Unreadable("no time");
        }
        if (isEpoch(format)) {
            return epoch(text);
        }
        TemporalAccessor parsed = parsed(text);
        if (parsed instanceof OffsetDateTime withOffset) {
            return withOffset.toInstant();
        }
        if (zone == null) {
            throw new Unreadable("the time carries no offset; name its zone, zone=Europe/Helsinki or zone=+02:00");
        }
        return inZone((LocalDateTime) parsed, zone, order);
    }

    private Instant epoch(String text) throws Unreadable {
        try {
            long number = Long.parseLong(text);
            return EPOCH_SECONDS.equals(format) ? Instant.ofEpochSecond(number) : Instant.ofEpochMilli(number);
        } catch (NumberFormatException | DateTimeException e) {
            throw new Unreadable("not a whole number of " + (EPOCH_SECONDS.equals(format) ? "seconds" : "milliseconds")
                    + " since 1970");
        }
    }

    private TemporalAccessor parsed(String text) throws Unreadable {
        String prepared = prepare.apply(text);
        try {
            return formatter.parseBest(prepared, OffsetDateTime::from, LocalDateTime::from);
        } catch (DateTimeException e) {
            // the hour 24 is midnight at the end of the day
            String midnight = HOUR_24.matcher(prepared).replaceFirst("00:00$1");
            if (!midnight.equals(prepared)) {
                try {
                    TemporalAccessor start = formatter.parseBest(midnight, OffsetDateTime::from, LocalDateTime::from);
                    return start instanceof OffsetDateTime o ? o.plusDays(1) : ((LocalDateTime) start).plusDays(1);
                } catch (DateTimeException stillNot) {
                    // refused below
                }
            }
            throw new Unreadable("not a time of the form "
                    + (format == null ? "2026-05-14T09:30:00Z or 2026-05-14 09:30:00" : format));
        }
    }

    private static Instant inZone(LocalDateTime local, ZoneId zone, Order order) throws Unreadable {
        List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
        if (offsets.size() == 1) {
            return local.toInstant(offsets.get(0));
        }
        ZoneOffsetTransition change = zone.getRules().getTransition(local);
        if (offsets.isEmpty()) {
            throw new Unreadable("this time never was in " + zone + ": the clock went from "
                    + change.getDateTimeBefore() + " to " + change.getDateTimeAfter());
        }
        Instant meant = order.goesOn(local.toInstant(offsets.get(0)), local.toInstant(offsets.get(1)));
        if (meant == null) {
            throw new Unreadable("this time was twice in " + zone + " (the clock went back from "
                    + change.getDateTimeBefore() + "), and the rows before do not tell which; write it with an offset");
        }
        return meant;
    }

    static boolean isEpoch(@Nullable String format) {
        return EPOCH_SECONDS.equals(format) || EPOCH_MILLISECONDS.equals(format);
    }
}
