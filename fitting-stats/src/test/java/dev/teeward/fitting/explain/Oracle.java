package dev.teeward.fitting.explain;

import dev.teeward.fitting.compare.PValueAdjustment;
import dev.teeward.fitting.compare.Verdict;
import java.util.Arrays;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.stat.StatUtils;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;

/**
 * Answers by z where the library must answer by t: it knows the variances, the drift, which shot is the mishit, and the delivery
 * without error of reading. It knows neither means nor slopes. Its rules and its budget are those of the library; its numbers
 * come from Commons Math.
 */
final class Oracle {
    private static final NormalDistribution NORMAL = new NormalDistribution();

    private Oracle() {}

    /** The whole difference in carry, at 5 %. */
    static Verdict total(SimulatedGolfer golfer, SimulatedGolfer.Hit hit) {
        double error = golfer.totalSd() / Math.sqrt(hit.carry().length);
        double mean = StatUtils.mean(hit.carry());
        return ClubOrSwing.verdict(twoSided(mean, error) <= 0.05, within(mean, error, SimulatedGolfer.MARGIN) < 0.05);
    }

    /** Speed and attack angle, at half of 5 %. */
    static Verdict swing(SimulatedGolfer.Hit hit) {
        double root = Math.sqrt(2.0 / hit.speed().length);
        double speed = StatUtils.mean(hit.speed());
        double attack = StatUtils.mean(hit.attack());
        double[] p = PValueAdjustment.HOLM.adjust(new double[] {
            twoSided(speed, root * SimulatedGolfer.SPEED_SD), twoSided(attack, root * SimulatedGolfer.ATTACK_SD)
        });
        boolean same = within(speed, root * SimulatedGolfer.SPEED_SD, SimulatedGolfer.SPEED_MARGIN) < 0.025
                && within(attack, root * SimulatedGolfer.ATTACK_SD, SimulatedGolfer.ATTACK_MARGIN) < 0.025;
        return ClubOrSwing.verdict(Arrays.stream(p).anyMatch(x -> x <= 0.025), same);
    }

    /** The carry at equal speed and attack angle, at half of 5 %. */
    static Verdict club(SimulatedGolfer golfer, SimulatedGolfer.Hit hit) {
        int n = hit.carry().length;
        double[] speed = hit.speed();
        double[] attack = hit.attack();
        double[][] x = new double[n][];
        // in units near 1, for the sake of the decomposition
        Arrays.setAll(x, i -> new double[] {speed[i], 100.0 * attack[i]});
        OLSMultipleLinearRegression squares = new OLSMultipleLinearRegression();
        squares.newSampleData(hit.carry(), x);
        double direct = squares.estimateRegressionParameters()[0];
        double residual = squares.estimateRegressionStandardError();
        double error = squares.estimateRegressionParametersStandardErrors()[0] * golfer.directSd() / residual;
        return ClubOrSwing.verdict(
                twoSided(direct, error) <= 0.025, within(direct, error, SimulatedGolfer.MARGIN) < 0.025);
    }

    private static double twoSided(double value, double error) {
        return 2.0 * NORMAL.cumulativeProbability(-Math.abs(value) / error);
    }

    private static double within(double value, double error, double margin) {
        return NORMAL.cumulativeProbability((Math.abs(value) - margin) / error);
    }
}
