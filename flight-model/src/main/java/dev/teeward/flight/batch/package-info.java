/**
 * Many flights at once, in columns of primitive doubles.
 *
 * <p>A {@link dev.teeward.flight.batch.LaunchTable} goes in, a {@link dev.teeward.flight.batch.FlightTable} comes out, row by row
 * the same bits as {@link dev.teeward.flight.FlightModel#fly} gives one by one. All columns are SI: metres, seconds, radians.
 * The library flies 256 balls side by side in loops that the virtual machine turns into vector instructions.
 *
 * <pre>{@code
 * LaunchTable launches = LaunchTable.builder()
 *     .ballSpeed(speeds).launchAngle(angles).spinRate(spins).axisTilt(tilts).build();
 * FlightTable flights = FlightBatch.of(FlightModel.standard().withAccuracy(Accuracy.MILLIMETER)).withThreads(2).fly(launches);
 * double[] carries = flights.carry();
 * }</pre>
 */
@NullMarked
package dev.teeward.flight.batch;

import org.jspecify.annotations.NullMarked;
