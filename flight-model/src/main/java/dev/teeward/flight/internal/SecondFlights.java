package dev.teeward.flight.internal;

import dev.teeward.flight.internal.FlightEquations.Lanes;
import dev.teeward.flight.internal.FlightPath.Ending;

/**
 * Stands between a {@link LaneIntegrator} and the giver of launches, and has those launches flown again that the {@link StepRule}
 * says, before any new one. Only the second flight is told.
 *
 * <p>Mutable; one for each thread.
 */
final class SecondFlights implements LaneExchange {
    // While some wait no new launch is taken: no more come to wait than launches fly, are prepared or are landing.
    private final int[] waiting = new int[3 * Lanes.WIDTH];
    private final StepRule rule;
    private final LaneExchange outside;
    private int count;

    SecondFlights(StepRule rule, LaneExchange outside) {
        this.rule = rule;
        this.outside = outside;
    }

    /** Whether a launch waits to be flown again. */
    boolean waiting() {
        return count > 0;
    }

    @Override
    public boolean next(Launch launch) {
        launch.again = count > 0;
        if (launch.again) {
            describe(waiting[--count], launch);
            return true;
        }
        return outside.next(launch);
    }

    @Override
    public void describe(int row, Launch launch) {
        outside.describe(row, launch);
    }

    @Override
    public void ended(Result result) {
        double[] state = result.state;
        if (!result.again
                && result.ending == Ending.LANDED
                && rule.again(state[FlightEquations.VX], state[FlightEquations.VY], state[FlightEquations.VZ])) {
            waiting[count++] = result.row;
            return;
        }
        outside.ended(result);
    }
}
