package oakum.physics.hygrothermal;

import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Locale;

/**
 * Measured and computed over time, two panels, as a small SVG that reads on white and on dark paper. The lines differ in
 * dash as well as in ink.
 */
final class MeasuredPlot {
    private static final int WIDTH = 760;
    private static final int HEIGHT = 200;
    private static final int LEFT = 46;
    private static final int TOP = 30;
    private static final int BETWEEN = 34;
    private static final String STYLE = "text{font:13px system-ui,sans-serif;fill:#47525c}"
            + ".m{stroke:#17202a;stroke-width:1.2;fill:none}"
            + ".c{stroke:#b04a12;stroke-width:1.6;fill:none;stroke-dasharray:5 2}"
            + ".g{stroke:#9aa5ab;stroke-width:.6;fill:none}.ct{fill:#b04a12}.mt{fill:#17202a}"
            + "@media(prefers-color-scheme:dark){text{fill:#aab4b9}.m{stroke:#e6eae8}.c{stroke:#ef9a63}"
            + ".ct{fill:#ef9a63}.mt{fill:#e6eae8}.g{stroke:#59646b}}";

    private final StringBuilder svg = new StringBuilder();
    private final LocalDateTime start;
    private final int hours;
    private final int every;
    private int panelTop = TOP;

    /**
     * Begins a plot.
     *
     * @param every how many hours make one point
     */
    MeasuredPlot(String title, LocalDateTime start, int hours, int every) {
        this.start = start;
        this.hours = hours;
        this.every = every;
        int height = TOP + 2 * HEIGHT + BETWEEN + 30;
        svg.append("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + WIDTH + " " + height
                + "\" role=\"img\"><title>" + title + "</title><style>" + STYLE + "</style>\n");
        svg.append(text(LEFT, 16, "mt", "measured ——")).append(text(LEFT + 110, 16, "ct", "computed - - -"));
    }

    /** Adds a panel of two lines, each mean of {@code every} hours. */
    MeasuredPlot panel(String label, double[] measured, double[] computed, double low, double high, double step) {
        for (double v = low; v <= high + 1e-9; v += step) {
            double y = y(v, low, high);
            svg.append(String.format(Locale.ROOT, "<path class=\"g\" d=\"M%d %.1fH%d\"/>%n", LEFT, y, WIDTH - 6));
            svg.append(String.format(
                    Locale.ROOT, "<text x=\"%d\" y=\"%.1f\" text-anchor=\"end\">%.0f</text>%n", LEFT - 5, y + 4, v));
        }
        svg.append(text(LEFT + 4, panelTop + 14, "", label));
        svg.append(line("m", measured, low, high)).append(line("c", computed, low, high));
        panelTop += HEIGHT + BETWEEN;
        return this;
    }

    /** The whole picture. */
    String done() {
        int y = panelTop - BETWEEN + 18;
        for (LocalDateTime month =
                        start.withDayOfMonth(1).toLocalDate().atStartOfDay().plusMonths(1);
                month.isBefore(start.plusHours(hours));
                month = month.plusMonths(1)) {
            double x = x((double) ChronoUnit.HOURS.between(start, month));
            svg.append(String.format(
                    Locale.ROOT,
                    "<path class=\"g\" d=\"M%.1f %dV%d\"/><text x=\"%.1f\" y=\"%d\">%d-%02d</text>%n",
                    x,
                    TOP,
                    y - 14,
                    x + 2,
                    y,
                    month.getYear(),
                    month.getMonthValue()));
        }
        return svg.append("</svg>\n").toString().replace("\r", "");
    }

    private static String text(int x, int y, String type, String words) {
        return "<text x=\"" + x + "\" y=\"" + y + "\"" + (type.isEmpty() ? "" : " class=\"" + type + "\"") + ">" + words
                + "</text>\n";
    }

    private String line(String type, double[] values, double low, double high) {
        StringBuilder path = new StringBuilder("<path class=\"" + type + "\" d=\"");
        for (int from = 0; from + every <= hours; from += every) {
            double sum = 0;
            for (int i = from; i < from + every; i++) {
                sum += values[i];
            }
            path.append(from == 0 ? "M" : "L")
                    .append(String.format(Locale.ROOT, "%.1f %.1f", x(from + 0.5 * every), y(sum / every, low, high)));
        }
        return path.append("\"/>\n").toString();
    }

    private double x(double hour) {
        return LEFT + hour / hours * (WIDTH - 6 - LEFT);
    }

    private double y(double value, double low, double high) {
        double share = Math.max(0, Math.min(1, (value - low) / (high - low)));
        return panelTop + HEIGHT - share * HEIGHT;
    }
}
