/**
 * Quantities with their units, and the small values that every result is made of. No physics.
 *
 * <p>Start with {@link dev.teeward.quantity.Length} and its six siblings, and with
 * {@link dev.teeward.quantity.Units} for the short forms:
 *
 * <pre>{@code
 * import static dev.teeward.quantity.Units.yards;
 *
 * Length carry = yards(150.0);
 * double meters = carry.meters();                     // 137.16
 * double feet = carry.value(LengthUnit.FOOT);         // 450.0
 * }</pre>
 *
 * <p>What a person enters or reads is a quantity, so that a speed cannot be given in yards. What a program computes with
 * is a plain {@code double} in SI, with the unit in its documentation. There is no arithmetic on quantities, no unit
 * algebra and no generic quantity: they were left out because they cost readers more than they save.
 *
 * <p>In all of Teeward nothing is null unless marked {@link org.jspecify.annotations.Nullable}, a null argument is
 * refused with {@link NullPointerException}, and an argument out of range with {@link IllegalArgumentException}.
 */
@NullMarked
package dev.teeward.quantity;

import org.jspecify.annotations.NullMarked;
