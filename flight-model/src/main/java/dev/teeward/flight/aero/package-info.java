/**
 * Drag and lift coefficients of golf balls, as plug-ins.
 *
 * <p>{@link dev.teeward.flight.aero.AerodynamicModel} is the interface, two methods in SI doubles;
 * {@link dev.teeward.flight.aero.TypicalAerodynamics} is the default for a ball nobody measured.
 * {@link dev.teeward.flight.aero.TableAerodynamics} holds a ball that was measured. A published model bears the name of its
 * authors and the year, and tells its range by {@link dev.teeward.flight.aero.ModelDomain}:
 * {@link dev.teeward.flight.aero.SmitsSmith1994} and {@link dev.teeward.flight.aero.Davies1949} give drag and lift and fly
 * alone. A source that gives only one of them is a {@link dev.teeward.flight.aero.DragLaw}
 * ({@link dev.teeward.flight.aero.Williams1959}) or a {@link dev.teeward.flight.aero.LiftLaw}
 * ({@link dev.teeward.flight.aero.Lyu2018}), and one that measured a line through the plane of Reynolds number and spin ratio
 * ({@link dev.teeward.flight.aero.Us6729976}) leaves the choice of coordinate open; they fly where the user combines them.
 * {@link dev.teeward.flight.aero.CoefficientSpread} says how much balls differ.
 *
 * <p>Not here for want of numbers: the tables of Bearman and Harvey (1976), which exist as figures only, and the regression of
 * Quintavalla (2002).
 */
@NullMarked
package dev.teeward.flight.aero;

import org.jspecify.annotations.NullMarked;
