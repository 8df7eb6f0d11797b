package dev.teeward.fitting.screen;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * What the covariance of the chosen subset is multiplied by: a factor for consistency at the normal distribution, and the
 * small-sample factors of Pison, Van Aelst and Willems 2002 (Metrika 55). The fitted constants are theirs, given from memory
 * and checked by the reference rows MCD-factors (two metrics), MCD-stars and MCD-hbk (three metrics).
 */
final class McdFactors {
    private static final double LOW = 0.5;
    private static final double HIGH = 0.875;

    /** For one and two metrics: {c, e} of 1 - exp(c) / n^e, at the shares 0.5 and 0.875. */
    private static final double[][][] RAW = {
        {{0.262024211897096, 0.604756680630497}, {-0.351584646688712, 1.01646567502486}},
        {{0.673292623522027, 0.691365864961895}, {0.446537815635445, 1.06690782995919}}
    };

    private static final double[][][] REWEIGHTED = {
        {{1.11098143415027, 1.5182890270453}, {-0.66046776772861, 0.88939595831888}},
        {{3.11101712909049, 1.91401056721863}, {0.79473550581058, 1.10081930350091}}
    };

    /** For more metrics: {a, b, q} of the value 1 + a / p^b at n = q p^2, for two q, at the shares 0.5 and 0.875. */
    private static final double[][][] RAW_MANY = {
        {{-1.42764571687802, 1.26263336932151, 2.0}, {-1.06141115981725, 1.28907991440387, 3.0}},
        {{-0.455179464070565, 1.11192541278794, 2.0}, {-0.294241208320834, 1.09649329149811, 3.0}}
    };

    private static final double[][][] REWEIGHTED_MANY = {
        {{-1.02842572724793, 1.67659883081926, 2.0}, {-0.26800273450853, 1.35968562893582, 3.0}},
        {{-0.544482443573914, 1.25994483222292, 2.0}, {-0.343791072183285, 1.25159004257133, 3.0}}
    };

    private McdFactors() {}

    /** The size of the subset for n points, p metrics and the share alpha of points it is to hold. */
    static int subsetSize(int n, int p, double alpha) {
        int smallest = (n + p + 1) / 2;
        return (int) Math.floor(2.0 * smallest - n + 2.0 * (n - smallest) * alpha);
    }

    /** (h / n) / P(chi-square with p + 2 below the h / n quantile of chi-square with p); 1 for all points. */
    static double consistency(int p, int h, int n) {
        if (h >= n) {
            return 1.0;
        }
        double share = (double) h / n;
        double quantile = ChiSquaredDistribution.of(p).inverseCumulativeProbability(share);
        return share / ChiSquaredDistribution.of(p + 2.0).cumulativeProbability(quantile);
    }

    static double smallSample(int n, int p, double alpha) {
        return factor(n, p, alpha, RAW, RAW_MANY);
    }

    static double smallSampleReweighted(int n, int p, double alpha) {
        return factor(n, p, alpha, REWEIGHTED, REWEIGHTED_MANY);
    }

    private static double factor(int n, int p, double alpha, double[][][] few, double[][][] many) {
        double low = p <= 2 ? direct(n, few[p - 1][0]) : throughTwoPoints(n, p, many[0]);
        double high = p <= 2 ? direct(n, few[p - 1][1]) : throughTwoPoints(n, p, many[1]);
        double value = alpha <= HIGH
                ? low + (high - low) / (HIGH - LOW) * (alpha - LOW)
                : high + (1.0 - high) / (1.0 - HIGH) * (alpha - HIGH);
        return 1.0 / value;
    }

    private static double direct(int n, double[] constants) {
        return 1.0 - Math.exp(constants[0]) / Math.pow(n, constants[1]);
    }

    /** 1 - exp(c) / n^e through the two fitted values. */
    private static double throughTwoPoints(int n, int p, double[][] fits) {
        double x0 = Math.log(fits[0][2] * p * p);
        double x1 = Math.log(fits[1][2] * p * p);
        double y0 = Math.log(-fits[0][0]) - fits[0][1] * Math.log(p);
        double y1 = Math.log(-fits[1][0]) - fits[1][1] * Math.log(p);
        double slope = (y1 - y0) / (x1 - x0);
        return 1.0 - Math.exp(y0 + slope * (Math.log(n) - x0));
    }
}
