package dev.teeward.flight;

import dev.teeward.flight.air.Gusts;
import dev.teeward.quantity.Estimate;
import dev.teeward.quantity.LengthUnit;
import java.util.SplittableRandom;

/**
 * What gusts do to a shot: the same launch in many winds.
 *
 * <p>Each draw flies in one wind of {@link Gusts}, with a generator split off the seeded one, so that the first hundred of a thousand draws are
 * those of a hundred. The intervals hold the central share of the draws: where one such shot comes down, not how well the mean is known.
 *
 * <pre>{@code
 * Gusts gusts = Gusts.around(degrees(90.0), mph(12.0), 0.2);
 * GustyFlights.Result result = GustyFlights.withDefaults().fly(FlightModel.standard(), gusts, launch);
 * result.side();   // in the mean wind, and between which bounds 95 of 100 come down
 * }</pre>
 *
 * <p>Immutable, and thread-safe if the aerodynamic model is; the same seed gives the same bits.
 */
public final class GustyFlights {
    private static final GustyFlights DEFAULTS = new GustyFlights(1_000, 0.95, 1L);

    private final int draws;
    private final double level;
    private final long seed;

    private GustyFlights(int draws, double level, long seed) {
        this.draws = draws;
        this.level = level;
        this.seed = seed;
        if (!(draws >= 20 && draws <= 1_000_000)) {
            throw new IllegalArgumentException("draws must be in [20, 1000000], but was " + draws);
        }
        if (!(level > 0.0 && level < 1.0)) {
            throw new IllegalArgumentException("level must be in (0, 1), but was " + level);
        }
    }

    /**
     * 1,000 draws, level 0.95, seed 1.
     *
     * @return the procedure
     */
    public static GustyFlights withDefaults() {
        return DEFAULTS;
    }

    /**
     * A copy with another number of draws.
     *
     * @param value in [20, 1000000]
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public GustyFlights withDraws(int value) {
        return new GustyFlights(value, level, seed);
    }

    /**
     * A copy at another level.
     *
     * @param value the share of the draws that an interval holds, in (0, 1)
     * @return the copy
     * @throws IllegalArgumentException if it lies outside
     */
    public GustyFlights withLevel(double value) {
        return new GustyFlights(draws, value, seed);
    }

    /**
     * A copy with other chance.
     *
     * @param value the seed
     * @return the copy
     */
    public GustyFlights withSeed(long value) {
        return new GustyFlights(draws, level, value);
    }

    /**
     * Flies a launch in many winds.
     *
     * @param model ball, air, elevation; its wind is replaced
     * @param gusts the winds
     * @param launch the launch
     * @return the flight in the mean wind, and the spread about it
     * @throws FlightException if a flight does not land, as {@link FlightModel#fly} says
     */
    public Result fly(FlightModel model, Gusts gusts, LaunchConditions launch) {
        Flight mean = model.withWind(gusts.mean()).fly(launch);
        SplittableRandom random = new SplittableRandom(seed);
        double[] carries = new double[draws];
        double[] sides = new double[draws];
        for (int i = 0; i < draws; i++) {
            Flight flight = model.withWind(gusts.draw(random.split())).fly(launch);
            carries[i] = flight.carry().meters();
            sides[i] = flight.side().meters();
        }
        return new Result(
                mean,
                Estimate.of(mean.carry().meters(), OtherAir.interval(carries, draws, level), LengthUnit.METER),
                Estimate.of(mean.side().meters(), OtherAir.interval(sides, draws, level), LengthUnit.METER));
    }

    /**
     * A launch in gusts.
     *
     * @param mean the flight in the mean wind
     * @param carry its carry, and the interval of the draws
     * @param side its side, right positive, and the interval of the draws
     */
    public record Result(Flight mean, Estimate carry, Estimate side) {}
}
