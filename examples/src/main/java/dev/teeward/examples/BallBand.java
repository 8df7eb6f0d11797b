package dev.teeward.examples;

import dev.teeward.flight.Ball;
import dev.teeward.flight.Flight;
import dev.teeward.flight.FlightModel;
import dev.teeward.flight.LaunchConditions;
import dev.teeward.flight.aero.AerodynamicModel;
import java.util.Optional;

/**
 * How far balls of one kind fly apart: a shot by the balls between which 95 of 100 balls carry, by the spread that the model states.
 *
 * @param shorter the flight at the lower end
 * @param longer the flight at the upper end
 */
record BallBand(Flight shorter, Flight longer) {
    /** The 97.5 % point of the normal distribution. */
    private static final double Z = 1.959963984540054;

    /** The band of a model; empty if its author states no spread from ball to ball. */
    static Optional<BallBand> of(AerodynamicModel model, LaunchConditions launch) {
        return model.spread()
                .map(spread -> new BallBand(
                        fly(spread.ballAt(model, m -> fly(m, launch).carry().meters(), -Z), launch),
                        fly(spread.ballAt(model, m -> fly(m, launch).carry().meters(), Z), launch)));
    }

    private static Flight fly(AerodynamicModel model, LaunchConditions launch) {
        return FlightModel.of(Ball.of(model)).fly(launch);
    }
}
