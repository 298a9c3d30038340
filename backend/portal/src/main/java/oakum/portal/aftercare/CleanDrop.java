package oakum.portal.aftercare;

/**
 * The clean drop of a filter at any airflow: Δp = a·Q + b·Q² through the two points of its clean mark. Where the points
 * would bend it downwards, the straight line through the origin that fits both in the mean.
 */
record CleanDrop(double linear, double square) {
    static CleanDrop of(NewFilter filter, CleanMark clean) {
        double high = filter.highFlowM3PerS();
        double low = filter.lowFlowM3PerS();
        double perFlowHigh = clean.highPa() / high;
        double perFlowLow = clean.lowPa() / low;
        if (high - low < 0.05 * high) {
            return new CleanDrop(perFlowHigh, 0);
        }
        double square = (perFlowHigh - perFlowLow) / (high - low);
        double linear = perFlowLow - square * low;
        return square < 0 || linear < 0
                ? new CleanDrop((perFlowHigh + perFlowLow) / 2, 0)
                : new CleanDrop(linear, square);
    }

    double at(double flowM3PerS) {
        return linear * flowM3PerS + square * flowM3PerS * flowM3PerS;
    }
}
