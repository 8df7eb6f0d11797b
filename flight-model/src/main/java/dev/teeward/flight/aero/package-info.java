/**
 * Drag and lift coefficients of golf balls, as plug-ins.
 *
 * <p>{@link dev.teeward.flight.aero.AerodynamicModel} is the interface, two methods in SI doubles;
 * {@link dev.teeward.flight.aero.TypicalAerodynamics} is the default for a ball nobody measured. A published model bears the
 * name of its authors and the year, and tells its range by {@link dev.teeward.flight.aero.ModelDomain}; a source that gives
 * only lift, only drag, or one line through the plane of Reynolds number and spin ratio is not a model and is not made
 * into one here.
 */
@NullMarked
package dev.teeward.flight.aero;

import org.jspecify.annotations.NullMarked;
