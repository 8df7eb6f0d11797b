package dev.teeward.flight.internal;

import dev.teeward.flight.internal.FlightPath.Ending;

/** Where the launches of a {@link LaneIntegrator} come from and its flights go to. */
public interface LaneExchange {
    /**
     * Describes the next launch.
     *
     * @param launch receives it
     * @return false if there is none left
     */
    boolean next(Launch launch);

    /**
     * Describes a launch once more.
     *
     * @param row its number
     * @param launch receives it
     */
    void describe(int row, Launch launch);

    /**
     * Takes a flight that has ended.
     *
     * @param result the flight, valid during the call
     */
    void ended(Result result);

    /** A launch; mutable. */
    final class Launch {
        /** The state at launch; the position is not read. */
        public final double[] state = new double[FlightEquations.STATE];

        /** The unit vector of the spin axis. */
        public final double[] axis = new double[3];

        /** A number of the caller's own. */
        public int row;

        /** Whether this is the second flight of the launch, by shorter steps; the caller need not set it. */
        boolean again;

        /** The height of the landing above the start [m]. */
        public double elevation;

        /** The density of the air, where each launch has its own air [kg/m3]. */
        public double density;

        /** The viscosity of the air, where each launch has its own air [Pa s]. */
        public double viscosity;

        /** The wind towards the target, where each launch has its own wind [m/s]. */
        public double alongTarget;

        /** The wind towards the right, where each launch has its own wind [m/s]. */
        public double towardsRight;

        /** A launch of zeros. */
        public Launch() {}
    }

    /** How a flight ended; mutable. */
    final class Result {
        /** The state at the end; the last one known if the ball has not landed. */
        public final double[] state = new double[FlightEquations.STATE];

        /** The number of the launch. */
        public int row;

        /** Whether it is the second flight of the launch. */
        boolean again;

        /** How it ended. */
        public Ending ending = Ending.DID_NOT_CONVERGE;

        /** When it ended [s]. */
        public double time;

        /** The greatest height [m]. */
        public double apexHeight;

        /** The Reynolds number at launch. */
        public double launchReynolds;

        /** The spin ratio at launch. */
        public double launchSpinRatio;

        /** The least Reynolds number at the ends of steps up to the end of the flight. */
        public double leastReynolds;

        /** The greatest Reynolds number there. */
        public double mostReynolds;

        /** The least spin ratio there. */
        public double leastSpinRatio;

        /** The greatest spin ratio there. */
        public double mostSpinRatio;

        /** Steps taken. */
        public int steps;

        /** Steps thrown away. */
        public int rejections;

        /** A flight not yet flown. */
        public Result() {}
    }
}
