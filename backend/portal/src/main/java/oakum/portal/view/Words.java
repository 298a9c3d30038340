package oakum.portal.view;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/** How a colleague counts, lists and names days. */
final class Words {
    private static final List<String> NUMBERS = List.of(
            "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve");
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);
    private static final DateTimeFormatter DAY_AND_YEAR = DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);
    /** Nearly a year away the weekday tells nothing and the year does. */
    private static final int NEAR_DAYS = 300;

    private Words() {}

    /** "one wall", "three walls", "no walls". */
    static String count(int count, String one, String many) {
        String number = count < NUMBERS.size() ? NUMBERS.get(count) : String.valueOf(count);
        return number + " " + (count == 1 ? one : many);
    }

    /** "Wed 20 May"; with the year instead of the weekday where it is far from today. */
    static String day(LocalDate day, LocalDate today) {
        boolean near = Math.abs(day.toEpochDay() - today.toEpochDay()) <= NEAR_DAYS;
        return (near ? DAY : DAY_AND_YEAR).format(day);
    }

    /** "today", "tomorrow", else the day. */
    static String when(LocalDate day, LocalDate today) {
        return day.equals(today) ? "today" : day.equals(today.plusDays(1)) ? "tomorrow" : day(day, today);
    }

    /** "a, b and c". */
    static String list(List<String> items) {
        int last = items.size() - 1;
        return last < 1
                ? String.join("", items)
                : String.join(", ", items.subList(0, last)) + " and " + items.get(last);
    }

    /** With a capital at its head and a full stop at its end. */
    static String sentence(String text) {
        if (text.isEmpty()) {
            return text;
        }
        String head = text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
        return head.endsWith(".") || head.endsWith("?") || head.endsWith("!") ? head : head + ".";
    }

    /** Sentences one after another, empty ones left out. */
    static String say(String... sentences) {
        return String.join(
                " ",
                List.of(sentences).stream()
                        .filter(s -> !s.isBlank())
                        .map(Words::sentence)
                        .toList());
    }
}
