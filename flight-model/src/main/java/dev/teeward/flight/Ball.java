package dev.teeward.flight;

import dev.teeward.flight.aero.AerodynamicModel;
import dev.teeward.flight.aero.TypicalAerodynamics;
import dev.teeward.quantity.Length;
import dev.teeward.quantity.Mass;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * What a flight needs to know of the ball: mass, diameter, moment of inertia and aerodynamic coefficients.
 *
 * <p>The rules allow a mass of at most 1.620 oz (45.93 g) and a diameter of at least 1.680 in (42.67 mm): Equipment Rules of
 * the R&amp;A and the USGA, part 4. Other balls fly too; {@link #warnings()} says how they differ.
 *
 * <p>The moment of inertia is held as the factor {@code I/(m r^2)}, 0.4 for a uniform sphere: 83.63 g cm2 at the limits of
 * mass and size.
 *
 * <pre>{@code
 * Ball ball = Ball.standard();                 // at the limits of the rules
 * Ball light = ball.withMass(Mass.ofGrams(45.5));
 * light.momentOfInertia();                     // 8.28e-6 kg m2
 * }</pre>
 *
 * <p>Immutable, and thread-safe if the aerodynamic model is.
 */
public final class Ball {
    private static final double RULE_MASS = 0.04593;
    private static final double RULE_DIAMETER = 0.04267;
    private static final double UNIFORM = 0.4;
    private static final double ROUNDING = 1e-12;

    private final Mass mass;
    private final Length diameter;
    private final double inertiaFactor;
    private final AerodynamicModel aerodynamics;

    private Ball(Mass mass, Length diameter, double inertiaFactor, AerodynamicModel aerodynamics) {
        this.mass = Objects.requireNonNull(mass, "mass");
        this.diameter = Objects.requireNonNull(diameter, "diameter");
        this.inertiaFactor = inertiaFactor;
        this.aerodynamics = Objects.requireNonNull(aerodynamics, "aerodynamics");
        within("mass", mass.kilograms(), 0.020, 0.100, "[20, 100] g (0.71-3.53 oz)", mass);
        within("diameter", diameter.meters(), 0.030, 0.060, "[30, 60] mm (1.18-2.36 in)", diameter);
        within(
                "inertiaFactor",
                inertiaFactor,
                0.2,
                2.0 / 3.0,
                "[0.2, 0.667] (0.4 uniform, 2/3 thin shell)",
                inertiaFactor);
    }

    /**
     * The typical ball: {@link TypicalAerodynamics}, uniform, at the limits of the rules.
     *
     * @return the ball
     */
    public static Ball standard() {
        return of(TypicalAerodynamics.of());
    }

    /**
     * A uniform ball at the limits of the rules, 45.93 g and 42.67 mm.
     *
     * @param aerodynamics its drag and lift coefficients
     * @return the ball
     */
    public static Ball of(AerodynamicModel aerodynamics) {
        return of(Mass.ofKilograms(RULE_MASS), Length.ofMeters(RULE_DIAMETER), UNIFORM, aerodynamics);
    }

    /**
     * A ball.
     *
     * @param mass its mass, in [20, 100] g
     * @param diameter its diameter, in [30, 60] mm
     * @param inertiaFactor its moment of inertia over {@code m r^2}, in [0.2, 2/3]
     * @param aerodynamics its drag and lift coefficients
     * @return the ball
     * @throws IllegalArgumentException if a number lies outside its range
     */
    public static Ball of(Mass mass, Length diameter, double inertiaFactor, AerodynamicModel aerodynamics) {
        return new Ball(mass, diameter, inertiaFactor, aerodynamics);
    }

    /**
     * A copy with another mass and the same inertia factor.
     *
     * @param value the mass, in [20, 100] g
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public Ball withMass(Mass value) {
        return new Ball(value, diameter, inertiaFactor, aerodynamics);
    }

    /**
     * A copy with another diameter and the same inertia factor.
     *
     * @param value the diameter, in [30, 60] mm
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public Ball withDiameter(Length value) {
        return new Ball(mass, value, inertiaFactor, aerodynamics);
    }

    /**
     * A copy with another distribution of its mass.
     *
     * @param value the moment of inertia over {@code m r^2}, in [0.2, 2/3]; 0.4 is uniform
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public Ball withInertiaFactor(double value) {
        return new Ball(mass, diameter, value, aerodynamics);
    }

    /**
     * A copy with a measured moment of inertia, at the mass and diameter it has now.
     *
     * @param kilogramSquareMeters the moment of inertia; 1 g cm2 is 1e-7 [kg m2]
     * @return the copy
     * @throws IllegalArgumentException if the inertia factor would lie outside [0.2, 2/3]
     */
    public Ball withMomentOfInertia(double kilogramSquareMeters) {
        double r = diameter.meters() / 2.0;
        return withInertiaFactor(kilogramSquareMeters / (mass.kilograms() * r * r));
    }

    /**
     * A copy with other drag and lift coefficients.
     *
     * @param value the aerodynamic model
     * @return the copy
     */
    public Ball withAerodynamics(AerodynamicModel value) {
        return new Ball(mass, diameter, inertiaFactor, value);
    }

    /**
     * The mass.
     *
     * @return the mass, in [20, 100] g
     */
    public Mass mass() {
        return mass;
    }

    /**
     * The diameter.
     *
     * @return the diameter, in [30, 60] mm
     */
    public Length diameter() {
        return diameter;
    }

    /**
     * The moment of inertia over {@code m r^2}.
     *
     * @return the factor, in [0.2, 2/3]
     */
    public double inertiaFactor() {
        return inertiaFactor;
    }

    /**
     * The moment of inertia about the centre.
     *
     * @return the moment [kg m2]
     */
    public double momentOfInertia() {
        double r = diameter.meters() / 2.0;
        return inertiaFactor * mass.kilograms() * r * r;
    }

    /**
     * The drag and lift coefficients.
     *
     * @return the aerodynamic model
     */
    public AerodynamicModel aerodynamics() {
        return aerodynamics;
    }

    /**
     * What the rules would object to.
     *
     * @return {@code ball-too-heavy}, {@code ball-too-small}, both or nothing
     */
    public List<Warning> warnings() {
        List<Warning> warnings = new ArrayList<>(2);
        if (mass.kilograms() > RULE_MASS + ROUNDING) {
            warnings.add(Warning.of(
                    "ball-too-heavy",
                    "the ball's mass of " + mass + " is above the limit of the rules, 45.93 g (1.620 oz)"));
        }
        if (diameter.meters() < RULE_DIAMETER - ROUNDING) {
            warnings.add(Warning.of(
                    "ball-too-small",
                    "the ball's diameter of " + diameter.millimeters()
                            + " mm is below the limit of the rules, 42.67 mm (1.680 in)"));
        }
        return List.copyOf(warnings);
    }

    @Override
    public String toString() {
        return "ball of " + mass + ", diameter " + diameter.millimeters() + " mm, inertia factor " + inertiaFactor
                + ", " + aerodynamics.reference();
    }

    private static void within(String name, double value, double low, double high, String range, Object shown) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException(name + " must be in " + range + ", but was " + shown);
        }
    }
}
