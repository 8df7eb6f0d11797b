package dev.teeward.fitting.compare;

import dev.teeward.fitting.internal.Distributions;
import dev.teeward.fitting.internal.Sample;
import dev.teeward.quantity.Interval;

/** What a t test needs of a sample. */
record Moments(int size, double mean, double variance) {
    static Moments of(Sample sample) {
        return new Moments(sample.size(), sample.mean(), sample.variance());
    }

    /** The sum of the products of two columns of one length. */
    static double products(double[] u, double[] v) {
        double sum = 0.0;
        for (int i = 0; i < u.length; i++) {
            sum += u[i] * v[i];
        }
        return sum;
    }

    double meanVariance() {
        return variance / size;
    }

    /** An estimate with its standard error (0 when the data show no spread) and degrees of freedom (0 when unknown). */
    record Pivot(double estimate, double standardError, double degreesOfFreedom) {
        static Pivot paired(Moments d) {
            return new Pivot(d.mean, Math.sqrt(d.meanVariance()), d.size - 1.0);
        }

        static Pivot welch(Moments x, Moments y) {
            double a = x.meanVariance();
            double b = y.meanVariance();
            double se2 = a + b;
            boolean unknown = x.size < 2 || y.size < 2 || !(se2 > 0.0);
            double df =
                    unknown ? 0.0 : 1.0 / ((a / se2) * (a / se2) / (x.size - 1) + (b / se2) * (b / se2) / (y.size - 1));
            return new Pivot(x.mean - y.mean, Math.sqrt(se2), df);
        }

        static Pivot pooled(Moments x, Moments y) {
            double df = x.size + y.size - 2.0;
            double variance = df > 0.0 ? ((x.size - 1) * x.variance + (y.size - 1) * y.variance) / df : 0.0;
            return new Pivot(x.mean - y.mean, Math.sqrt(variance * (1.0 / x.size + 1.0 / y.size)), df);
        }

        boolean defined() {
            return standardError > 0.0 && degreesOfFreedom > 0.0;
        }

        double t(double nullValue) {
            return (estimate - nullValue) / standardError;
        }

        TestResult result(TestResult.Draft draft, Options options) {
            if (draft.smallestSample() < 2) {
                return draft.warn(
                                "too-few-shots",
                                "too few shots for a standard error, so nothing is said about the difference")
                        .unanswered(estimate);
            }
            if (!(standardError > 0.0)) {
                return draft.warn(
                                "no-spread",
                                "all values are equal, so there is no measure of error and a t test cannot judge; "
                                        + "record with finer resolution or use the exact test")
                        .unanswered(estimate);
            }
            double t = t(options.nullValue());
            double greater = Distributions.tUpperTail(t, degreesOfFreedom);
            double less = Distributions.tUpperTail(-t, degreesOfFreedom);
            double reach = Distributions.tQuantile(1.0 - options.tail(), degreesOfFreedom) * standardError;
            Interval interval = options.interval(estimate - reach, estimate + reach);
            return draft.statistic(t)
                    .degreesOfFreedom(degreesOfFreedom)
                    .pValue(options.alternative().pValue(greater, less))
                    .estimate(estimate, interval);
        }
    }
}
