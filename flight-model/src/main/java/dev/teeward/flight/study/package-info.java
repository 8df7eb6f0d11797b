/**
 * What a researcher does with a flight model: check it, ask it what hangs on what, fit it, and compare it with what was seen.
 *
 * <pre>{@code
 * FlightModel model = FlightModel.standard();
 * ReferenceFlight.withDefaults().fly(model, launch).error().millimeters();         // below 0.1
 *
 * Sensitivity.Result s = Sensitivity.of(model).at(launch);
 * s.derivative(FlightOutput.CARRY, LengthUnit.YARD, FlightInput.BALL_SPEED, SpeedUnit.MILE_PER_HOUR);
 * TolerancePropagation.withDefaults()
 *     .linear(s, Tolerances.none().with(FlightInput.BALL_SPEED, 0.3).with(FlightInput.SPIN_RATE, 20.0))
 *     .estimate(FlightOutput.CARRY);
 *
 * CalibrationResult own = Calibration.withDefaults().fit(ParametricAerodynamics.ball(), flights);
 * Validation.withDefaults()
 *     .with("typical", TypicalAerodynamics.of()).with("own ball", own.model())
 *     .compare(otherFlights).markdown();
 * }</pre>
 *
 * <ul>
 *   <li>{@link dev.teeward.flight.study.ReferenceFlight}: any integrator of Hipparchus as referee over the same forces;
 *   <li>{@link dev.teeward.flight.study.Sensitivity} and {@link dev.teeward.flight.study.TolerancePropagation}: derivatives,
 *       and intervals from measurement tolerances;
 *   <li>{@link dev.teeward.flight.study.DeliveryPropagation}: intervals from the delivery of a club, its head, ball and turf to
 *       where the ball stops;
 *   <li>{@link dev.teeward.flight.study.LaunchOptimizer}: the best launch or delivery, and how flat the best is;
 *   <li>{@link dev.teeward.flight.study.Calibration}: parameters of any model from observed flights, with uncertainty;
 *   <li>{@link dev.teeward.flight.study.Validation}: models against observed flights;
 *   <li>{@link dev.teeward.flight.study.ImpactInverse}, {@link dev.teeward.flight.study.ImpactConsistency} and
 *       {@link dev.teeward.flight.study.ImpactCalibration}: from launch back to delivery, whether the two agree, and the
 *       constants of an impact from struck shots.
 * </ul>
 *
 * <p>Numbers here are SI {@code double}s unless they are quantities or estimates with their unit. Derivatives, fits and the
 * profile of a fit use Hipparchus, whose elementary functions have the same bits on every Java virtual machine.
 */
@NullMarked
package dev.teeward.flight.study;

import org.jspecify.annotations.NullMarked;
