package dev.teeward.flight.batch;

import dev.teeward.flight.FlightModel;
import dev.teeward.flight.aero.ModelDomain;
import dev.teeward.flight.ground.Ground;
import dev.teeward.flight.ground.RollOut;
import dev.teeward.flight.internal.FlightEquations;
import dev.teeward.flight.internal.LaneExchange;
import dev.teeward.flight.internal.LaunchState;
import dev.teeward.flight.internal.ReverseLift;
import dev.teeward.flight.internal.StrictTrigonometry;
import dev.teeward.quantity.Warning;
import org.jspecify.annotations.Nullable;

/** Turns rows of a launch table into launches, and flights into rows of a flight table. One for each thread. */
final class RowExchange implements LaneExchange {
    private static final double[] NONE = {};

    private final BatchRun run;
    private double[] ballSpeed = NONE;
    private double[] launchAngle = NONE;
    private double[] spinRate = NONE;
    private double @Nullable [] startDirection;
    private double @Nullable [] axisTilt;
    private double @Nullable [] landingElevation;
    private double @Nullable [] density;
    private double @Nullable [] viscosity;
    private double @Nullable [] windAlongTarget;
    private double @Nullable [] windTowardsRight;
    private int @Nullable [] order;
    private FlightTable flights = FlightTable.ofRows(0);
    private ModelDomain domain = ModelDomain.unbounded();
    private boolean bounded;
    private @Nullable Ground ground;
    private double radius;
    private double inertiaFactor;
    private double gravity;
    private double modelDensity;
    private double modelElevation;
    private int at;
    private int end;

    RowExchange(BatchRun run) {
        this.run = run;
    }

    void begin(FlightModel model, LaunchTable launches, FlightTable into, int @Nullable [] rowOrder) {
        ballSpeed = launches.ballSpeed();
        launchAngle = launches.launchAngle();
        spinRate = launches.spinRate();
        startDirection = launches.startDirection();
        axisTilt = launches.axisTilt();
        landingElevation = launches.landingElevation();
        density = launches.density();
        viscosity = launches.viscosity();
        windAlongTarget = launches.windAlongTarget();
        windTowardsRight = launches.windTowardsRight();
        order = rowOrder;
        flights = into;
        domain = model.ball().aerodynamics().domain();
        bounded = !domain.equals(ModelDomain.unbounded());
        ground = model.ground().orElse(null);
        radius = model.ball().diameter().meters() / 2.0;
        inertiaFactor = model.ball().inertiaFactor();
        gravity = model.gravity();
        modelDensity = model.air().density();
        modelElevation = model.landingElevation().meters();
        at = 0;
        end = 0;
    }

    @Override
    public boolean next(LaneExchange.Launch launch) {
        if (at == end) {
            at = run.portion();
            if (at < 0) {
                at = end;
                return false;
            }
            end = run.portionEnd(at);
        }
        int row = order == null ? at : order[at];
        at++;
        describe(row, launch);
        return true;
    }

    @Override
    public void describe(int row, LaneExchange.Launch launch) {
        launch.row = row;
        write(row, launch.state, launch.axis);
        launch.elevation = landingElevation == null ? modelElevation : landingElevation[row];
        if (density != null && viscosity != null) {
            launch.density = density[row] + 0.0;
            launch.viscosity = viscosity[row];
        }
        if (windAlongTarget != null && windTowardsRight != null) {
            launch.alongTarget = windAlongTarget[row];
            launch.towardsRight = windTowardsRight[row];
        }
    }

    private void write(int row, double[] state, double[] axis) {
        LaunchState.write(
                ballSpeed[row],
                launchAngle[row],
                startDirection == null ? 0.0 : startDirection[row],
                spinRate[row],
                axisTilt == null ? 0.0 : axisTilt[row],
                state,
                axis);
    }

    @Override
    public void ended(LaneExchange.Result result) {
        switch (result.ending) {
            case LANDED -> {
                land(result);
                flights.set(result.row, FlightStatus.LANDED, warnings(result) | ground(result));
            }
            case LANDED_AT_ONCE -> {
                land(result);
                flights.set(result.row, FlightStatus.LANDED_AT_ONCE, RowWarning.LANDS_AT_ONCE.bit() | ground(result));
            }
            case ELEVATION_NOT_REACHED -> fail(result.row, FlightStatus.ELEVATION_NOT_REACHED);
            case DID_NOT_COME_DOWN -> fail(result.row, FlightStatus.DID_NOT_COME_DOWN);
            case DID_NOT_CONVERGE -> fail(result.row, FlightStatus.DID_NOT_CONVERGE);
        }
    }

    /** The numbers as {@link dev.teeward.flight.Flight} has them. */
    private void land(LaneExchange.Result result) {
        double x = result.state[FlightEquations.X];
        double z = result.state[FlightEquations.Z];
        double vx = result.state[FlightEquations.VX];
        double vy = result.state[FlightEquations.VY];
        double vz = result.state[FlightEquations.VZ];
        double bearing = startDirection == null ? 0.0 : startDirection[result.row];
        flights.numbers(
                result.row,
                Math.sqrt(x * x + z * z),
                z,
                flights.wantsCurve() ? z * StrictTrigonometry.cos(bearing) - x * StrictTrigonometry.sin(bearing) : 0.0,
                result.apexHeight,
                result.time,
                flights.wantsDescentAngle() ? StrictTrigonometry.fall(vy, Math.sqrt(vx * vx + vz * vz)) : 0.0,
                Math.sqrt(vx * vx + vy * vy + vz * vz),
                result.state[FlightEquations.SPIN]);
    }

    /** Bounces and rolls the ball as {@link FlightModel#fly} does, if anybody wants to know; its warnings. */
    private int ground(LaneExchange.Result result) {
        if (!flights.wantsTotal()) {
            return 0;
        }
        Ground under = ground;
        if (under == null) {
            flights.ground(result.row, Double.NaN, Double.NaN);
            return 0;
        }
        double[] state = result.state;
        double spin = state[FlightEquations.SPIN];
        double[] axis = new double[3];
        write(result.row, new double[FlightEquations.STATE], axis);
        RollOut rollOut = under.run(
                new double[] {state[FlightEquations.X], state[FlightEquations.Y], state[FlightEquations.Z]},
                new double[] {state[FlightEquations.VX], state[FlightEquations.VY], state[FlightEquations.VZ]},
                new double[] {spin * axis[0], spin * axis[1], spin * axis[2]},
                radius,
                inertiaFactor,
                gravity);
        boolean stops = rollOut.restKnown() && rollOut.atRest();
        double total = stops ? rollOut.rest().distance().meters() : Double.NaN;
        double x = state[FlightEquations.X];
        double z = state[FlightEquations.Z];
        flights.ground(result.row, total, total - Math.sqrt(x * x + z * z));
        int bits = 0;
        for (Warning warning : rollOut.warnings()) {
            bits |= RowWarning.of(warning.code()).bit();
        }
        return bits;
    }

    private void fail(int row, FlightStatus status) {
        double nothing = Double.NaN;
        flights.numbers(row, nothing, nothing, nothing, nothing, nothing, nothing, nothing, nothing);
        flights.ground(row, nothing, nothing);
        flights.set(row, status, 0);
    }

    private int warnings(LaneExchange.Result result) {
        if (!bounded || !((density == null ? modelDensity : density[result.row]) > 0.0)) {
            return 0;
        }
        int bits = 0;
        if (!(result.leastReynolds >= domain.minRe() && result.mostReynolds <= domain.maxRe())) {
            bits |= RowWarning.REYNOLDS_OUTSIDE_MODEL.bit();
        }
        if (!(result.leastSpinRatio >= domain.minS() && result.mostSpinRatio <= domain.maxS())) {
            bits |= RowWarning.SPIN_RATIO_OUTSIDE_MODEL.bit();
        }
        double re = result.launchReynolds;
        double s = result.launchSpinRatio;
        if (ReverseLift.possible(re, s)) {
            bits |= RowWarning.REVERSE_LIFT_POSSIBLE.bit();
        }
        return bits;
    }
}
