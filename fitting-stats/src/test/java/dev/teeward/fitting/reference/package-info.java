/** Reading of the tables of outside reference values. */
@NullMarked
package dev.teeward.fitting.reference;

import org.jspecify.annotations.NullMarked;
