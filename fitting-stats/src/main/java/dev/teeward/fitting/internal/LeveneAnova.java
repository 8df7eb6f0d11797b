package dev.teeward.fitting.internal;

import java.util.List;

/**
 * One-way analysis of variance of absolute deviations from each group's centre: Brown and Forsythe (1974) about the
 * median, Levene (1960) about the mean.
 *
 * @param statistic W, an F ratio
 * @param df1 groups minus 1
 * @param df2 values minus groups
 */
public record LeveneAnova(double statistic, double df1, double df2) {
    /**
     * The analysis.
     *
     * @param groups at least two groups, more values than groups
     * @param aboutMedian whether to measure from the median rather than from the mean
     * @return the F ratio; 0 if the deviations do not differ at all, infinite if they differ between groups only
     */
    public static LeveneAnova of(List<Sample> groups, boolean aboutMedian) {
        double total = 0.0;
        int n = 0;
        double within = 0.0;
        double[] means = new double[groups.size()];
        for (int g = 0; g < means.length; g++) {
            Sample group = groups.get(g);
            Sample z = group.absoluteDeviations(aboutMedian ? group.median() : group.mean());
            means[g] = z.mean();
            total += z.mean() * z.size();
            n += z.size();
            within += (z.size() - 1) * z.variance();
        }
        double between = 0.0;
        for (int g = 0; g < means.length; g++) {
            double d = means[g] - total / n;
            between += groups.get(g).size() * d * d;
        }
        double df1 = means.length - 1.0;
        double df2 = n - (double) means.length;
        double w = between == 0.0 ? 0.0 : (between / df1) / (within / df2);
        return new LeveneAnova(w, df1, df2);
    }

    /**
     * The p of the F ratio.
     *
     * @return the upper tail
     */
    public double pValue() {
        return Double.isInfinite(statistic) ? 0.0 : Distributions.fUpperTail(statistic, df1, df2);
    }
}
