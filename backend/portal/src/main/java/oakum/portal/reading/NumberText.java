package oakum.portal.reading;

/** Reads a number as loggers write it, and nothing that only looks like one to a lenient parser. */
final class NumberText {
    private final char decimal;

    /**
     * A reader of numbers.
     *
     * @param decimal {@code '.'} or {@code ','}
     */
    NumberText(char decimal) {
        this.decimal = decimal;
    }

    /**
     * Reads digits with an optional sign, fraction and exponent; blanks around them are no matter.
     *
     * @throws Unreadable for everything else, {@code NaN} and {@code Infinity} included
     */
    double parse(String text) throws Unreadable {
        String stripped = text.strip();
        int length = stripped.length();
        int i = 0;
        if (i < length && (stripped.charAt(i) == '-' || stripped.charAt(i) == '+')) {
            i++;
        }
        int digits = i;
        i = skipDigits(stripped, i);
        int seen = i - digits;
        if (i < length && stripped.charAt(i) == decimal) {
            int fraction = i + 1;
            i = skipDigits(stripped, fraction);
            seen += i - fraction;
        }
        if (seen > 0 && i < length && (stripped.charAt(i) == 'e' || stripped.charAt(i) == 'E')) {
            int exponent = i + 1;
            if (exponent < length && (stripped.charAt(exponent) == '-' || stripped.charAt(exponent) == '+')) {
                exponent++;
            }
            i = skipDigits(stripped, exponent);
            if (i == exponent) {
                seen = 0;
            }
        }
        if (seen == 0 || i < length) {
            throw new Unreadable(reason(stripped));
        }
        return Double.parseDouble(decimal == '.' ? stripped : stripped.replace(decimal, '.'));
    }

    private static int skipDigits(String text, int from) {
        int i = from;
        while (i < text.length() && text.charAt(i) >= '0' && text.charAt(i) <= '9') {
            i++;
        }
        return i;
    }

    private String reason(String stripped) {
        if (stripped.isEmpty()) {
            return "no number";
        }
        char other = decimal == '.' ? ',' : '.';
        if (stripped.indexOf(other) >= 0 && stripped.chars().anyMatch(c -> c >= '0' && c <= '9')) {
            return "not a number with \"" + decimal + "\" as decimal sign; set decimal=" + other
                    + " if the file writes it so";
        }
        return "not a number";
    }
}
