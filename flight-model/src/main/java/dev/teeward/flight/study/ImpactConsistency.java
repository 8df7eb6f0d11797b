package dev.teeward.flight.study;

import dev.teeward.flight.impact.ClubHead;
import dev.teeward.flight.impact.ImpactModel;
import dev.teeward.flight.impact.RigidImpact;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import org.hipparchus.special.Gamma;

/**
 * Does this launch follow from this delivery? For finding misreads.
 *
 * <p>The delivery is adjusted to agree best with everything measured; chi-square, the sum of the squared adjustments in
 * units of the standard deviations, has as many degrees of freedom as there are measurements beyond what they determine, if
 * the standard deviations are right and the impact model holds. Each adjustment over its own standard deviation,
 * {@code w = r/sqrt(1 - h)} with h the leverage, would be a standard normal value; leaving that one measurement out
 * lowers chi-square by {@code w^2} (Baarda 1968, from memory). So the largest |w| is the one most to blame. Measurements that
 * check only each other have equal |w| and cannot be told apart: all of them are named.
 *
 * <p>Restitution, friction and mass of the head enter as if they were exact; a wrong head looks like a misread of ball speed
 * or club speed on every shot. Calibrate first.
 *
 * <pre>{@code
 * ImpactConsistency.Result r = ImpactConsistency.withDefaults().check(measured, head);
 * r.pValue();      // 0.0004: this launch does not follow from this delivery
 * r.mostToBlame(); // [SPIN_RATE]
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ImpactConsistency {
    /** Two that differ by less than this share in |w| are not told apart. */
    private static final double SAME = 0.02;

    /** Below this share of its variance left, a measurement is checked by nothing. */
    private static final double UNCHECKED = 1e-6;

    private static final ImpactConsistency DEFAULTS = new ImpactConsistency(RigidImpact.standard());

    private final ImpactModel model;

    private ImpactConsistency(ImpactModel model) {
        this.model = Objects.requireNonNull(model, "model");
    }

    /**
     * By the rigid impact of the ball of the rules.
     *
     * @return the procedure
     */
    public static ImpactConsistency withDefaults() {
        return DEFAULTS;
    }

    /**
     * A copy that checks by another model.
     *
     * @param value the impact model
     * @return the copy
     */
    public ImpactConsistency withModel(ImpactModel value) {
        return new ImpactConsistency(value);
    }

    /**
     * Checks one impact.
     *
     * @param measured what was measured of it, with the standard deviations of the errors
     * @param head what hit the ball; without inertia the strike is assumed central unless given
     * @return chi-square, and what is most to blame for it
     * @throws IllegalArgumentException if the measurements do not check each other: no more of them than they determine
     * @throws IllegalStateException if no delivery was found that agrees best
     */
    public Result check(MeasuredImpact measured, ClubHead head) {
        List<Warning> warnings = new ArrayList<>();
        MeasuredImpact known = ImpactInverse.central(measured, head, warnings);
        ImpactAdjustment fit = ImpactAdjustment.of(model, head, known, ImpactInverse.start(known, head));
        if (fit.observed().size() <= fit.rank()) {
            throw new IllegalArgumentException("there must be more measurements than they determine, but there were "
                    + fit.observed().size() + " for " + fit.rank()
                    + "; measure more of the delivery, or assume what is known of the strike");
        }
        return new Result(fit, List.copyOf(warnings));
    }

    /** How well a launch and a delivery agree. Immutable and thread-safe. */
    public static final class Result {
        private final double chiSquare;
        private final int degreesOfFreedom;
        private final double pValue;
        private final Map<ImpactQuantity, Double> adjustments = new EnumMap<>(ImpactQuantity.class);
        private final Map<ImpactQuantity, Double> standardized = new EnumMap<>(ImpactQuantity.class);
        private final List<ImpactQuantity> mostToBlame = new ArrayList<>();
        private final List<Warning> warnings;

        private Result(ImpactAdjustment fit, List<Warning> warnings) {
            this.warnings = warnings;
            chiSquare = fit.chiSquare();
            degreesOfFreedom = fit.observed().size() - fit.rank();
            pValue = Gamma.regularizedGammaQ(
                    0.5 * degreesOfFreedom, 0.5 * chiSquare); // upper tail, without cancellation
            double[] residuals = fit.residuals();
            double largest = 0.0;
            for (int row = 0; row < residuals.length; row++) {
                ImpactQuantity quantity = fit.observed().get(row);
                adjustments.put(quantity, residuals[row]);
                double left = fit.leftToResidual(row);
                if (left > UNCHECKED) {
                    double w = residuals[row] / Math.sqrt(left);
                    standardized.put(quantity, w);
                    largest = Math.max(largest, Math.abs(w));
                }
            }
            for (Map.Entry<ImpactQuantity, Double> entry : standardized.entrySet()) {
                if (largest > 0.0 && Math.abs(entry.getValue()) >= (1.0 - SAME) * largest) {
                    mostToBlame.add(entry.getKey());
                }
            }
        }

        /**
         * The sum of the squared adjustments in units of the standard deviations.
         *
         * @return chi-square, not negative
         */
        public double chiSquare() {
            return chiSquare;
        }

        /**
         * How many measurements there are beyond what they determine.
         *
         * @return the degrees of freedom, at least 1
         */
        public int degreesOfFreedom() {
            return degreesOfFreedom;
        }

        /**
         * The probability of a chi-square at least as large if nothing was misread.
         *
         * @return p, in [0, 1]
         */
        public double pValue() {
            return pValue;
        }

        /**
         * By how much a measurement had to give way: agreed value minus measured one, in units of its standard deviation.
         *
         * @param quantity which
         * @return the adjustment; empty if it was not measured
         */
        public OptionalDouble adjustment(ImpactQuantity quantity) {
            Double value = adjustments.get(quantity);
            return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
        }

        /**
         * The adjustment over its own standard deviation, a standard normal value if nothing was misread.
         *
         * @param quantity which
         * @return w; empty if it was not measured or nothing else checks it
         */
        public OptionalDouble standardized(ImpactQuantity quantity) {
            Double value = standardized.get(quantity);
            return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
        }

        /**
         * The measurement without which the rest agrees best; several if they cannot be told apart.
         *
         * @return the quantities with the largest |w|, in order
         */
        public List<ImpactQuantity> mostToBlame() {
            return List.copyOf(mostToBlame);
        }

        /**
         * What a reader must know.
         *
         * @return {@code strike-assumed-central} or nothing
         */
        public List<Warning> warnings() {
            return warnings;
        }

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "chi-square %.2f, %d degrees of freedom, p %.4f, most to blame %s",
                    chiSquare,
                    degreesOfFreedom,
                    pValue,
                    mostToBlame);
        }
    }
}
