package dev.teeward.flight.internal;

import static dev.teeward.flight.internal.FlightEquations.RATES;
import static dev.teeward.flight.internal.FlightEquations.SPIN;
import static dev.teeward.flight.internal.FlightEquations.STATE;
import static dev.teeward.flight.internal.FlightEquations.VX;
import static dev.teeward.flight.internal.FlightEquations.VY;
import static dev.teeward.flight.internal.FlightEquations.VZ;
import static dev.teeward.flight.internal.FlightEquations.X;
import static dev.teeward.flight.internal.FlightEquations.Y;
import static dev.teeward.flight.internal.FlightEquations.Z;

import dev.teeward.flight.internal.FlightEquations.Lanes;

/**
 * The explicit Runge-Kutta pair of orders 6 and 5 in eight stages of Prince and Dormand, RK6(5)8M.
 *
 * <p>Source: P. J. Prince and J. R. Dormand (1981), High order embedded Runge-Kutta formulae, J. Comput. Appl. Math. 7:67-75.
 * Written down from memory; a test checks that both formulas meet every order condition. Its
 * seventh-order error terms have a norm of 2.3e-4 against 2.1e-3 for Verner's pair of the same cost (1978); over random golf
 * flights with equal steps the largest landing error was forty times smaller.
 *
 * <p>A sum over the stages always runs in the order of the stages, each product fused with the sum before it ({@code fma}), and
 * so is the product of the whole with the step.
 */
public final class PrinceDormand65 {
    /** Stages of a step. */
    public static final int STAGES = 8;

    /** Components of a state that a stage needs. */
    private static final int STAGE_STATE = 5;

    private static final double[] NODES = {0.0, 1.0 / 10, 2.0 / 9, 3.0 / 7, 3.0 / 5, 4.0 / 5, 1.0, 1.0};

    // A_ij weighs stage j in stage i, B_j stage j in the result, E_j in the result of order 6 less that of order 5.
    private static final double A21 = 1.0 / 10;
    private static final double A31 = -2.0 / 81;
    private static final double A32 = 20.0 / 81;
    private static final double A41 = 615.0 / 1372;
    private static final double A42 = -270.0 / 343;
    private static final double A43 = 1053.0 / 1372;
    private static final double A51 = 3243.0 / 5500;
    private static final double A52 = -54.0 / 55;
    private static final double A53 = 50949.0 / 71500;
    private static final double A54 = 4998.0 / 17875;
    private static final double A61 = -26492.0 / 37125;
    private static final double A62 = 72.0 / 55;
    private static final double A63 = 2808.0 / 23375;
    private static final double A64 = -24206.0 / 37125;
    private static final double A65 = 338.0 / 459;
    private static final double A71 = 5561.0 / 2376;
    private static final double A72 = -35.0 / 11;
    private static final double A73 = -24117.0 / 31603;
    private static final double A74 = 899983.0 / 200772;
    private static final double A75 = -5225.0 / 1836;
    private static final double A76 = 3925.0 / 4056;
    private static final double A81 = 465467.0 / 266112;
    private static final double A82 = -2945.0 / 1232;
    private static final double A83 = -5610201.0 / 14158144;
    private static final double A84 = 10513573.0 / 3212352;
    private static final double A85 = -424325.0 / 205632;
    private static final double A86 = 376225.0 / 454272;
    private static final double B1 = 61.0 / 864;
    private static final double B3 = 98415.0 / 321776;
    private static final double B4 = 16807.0 / 146016;
    private static final double B5 = 1375.0 / 7344;
    private static final double B6 = 1375.0 / 5408;
    private static final double B7 = -37.0 / 1120;
    private static final double B8 = 1.0 / 10;
    private static final double E1 = B1 - (821.0 / 10800);
    private static final double E3 = B3 - (19683.0 / 71825);
    private static final double E4 = B4 - (175273.0 / 912600);
    private static final double E5 = B5 - (395.0 / 3672);
    private static final double E6 = B6 - (785.0 / 2704);
    private static final double E7 = B7 - (3.0 / 50);
    private static final double E8 = B8;

    private static final int K2 = RATES;
    private static final int K3 = 2 * RATES;
    private static final int K4 = 3 * RATES;
    private static final int K5 = 4 * RATES;
    private static final int K6 = 5 * RATES;
    private static final int K7 = 6 * RATES;
    private static final int K8 = 7 * RATES;

    private static final double[][] WEIGHTS = {
        {},
        {A21},
        {A31, A32},
        {A41, A42, A43},
        {A51, A52, A53, A54},
        {A61, A62, A63, A64, A65},
        {A71, A72, A73, A74, A75, A76},
        {A81, A82, A83, A84, A85, A86, 0.0},
    };

    private static final double[] SIXTH = {B1, 0.0, B3, B4, B5, B6, B7, B8};

    private static final double[] DIFFERENCE = {E1, 0.0, E3, E4, E5, E6, E7, E8};

    private final double[] stage = new double[STATE];
    private final double[] error = new double[STATE];

    /** The work space of one flight; mutable, one for each thread. */
    public PrinceDormand65() {}

    /**
     * The abscissae of the stages.
     *
     * @return a copy
     */
    public static double[] nodes() {
        return NODES.clone();
    }

    /**
     * The weights of the earlier stages in a stage.
     *
     * @param stage the stage, 0 to 7
     * @return a copy, as many as there are earlier stages
     */
    public static double[] weights(int stage) {
        return WEIGHTS[stage].clone();
    }

    /**
     * The weights of the result of order 6.
     *
     * @return a copy
     */
    public static double[] sixth() {
        return SIXTH.clone();
    }

    /**
     * The weights of the embedded result of order 5.
     *
     * @return a copy
     */
    public static double[] fifth() {
        double[] fifth = new double[STAGES];
        for (int j = 0; j < STAGES; j++) {
            fifth[j] = SIXTH[j] - DIFFERENCE[j];
        }
        return fifth;
    }

    /**
     * One step.
     *
     * @param equations the force sum
     * @param axis the spin axis
     * @param state the state at the start
     * @param k the rates of the stages; those of the first stage must be there already
     * @param h the step [s]
     * @param next receives the state at the end
     * @return the error estimate: that of the position plus that of the velocity and of the speed of the ball's surface over
     *     one second; not finite if anything was not [m]
     */
    double step(FlightEquations equations, double[] axis, double[] state, double[] k, double h, double[] next) {
        for (int c = 0; c < STAGE_STATE; c++) {
            stage[c] = Math.fma(h, A21 * k[c], state[c]);
        }
        equations.rates(stage, axis, k, K2);
        for (int c = 0; c < STAGE_STATE; c++) {
            stage[c] = Math.fma(h, Math.fma(A32, k[K2 + c], A31 * k[c]), state[c]);
        }
        equations.rates(stage, axis, k, K3);
        for (int c = 0; c < STAGE_STATE; c++) {
            stage[c] = Math.fma(h, Math.fma(A43, k[K3 + c], Math.fma(A42, k[K2 + c], A41 * k[c])), state[c]);
        }
        equations.rates(stage, axis, k, K4);
        for (int c = 0; c < STAGE_STATE; c++) {
            stage[c] = Math.fma(
                    h,
                    Math.fma(A54, k[K4 + c], Math.fma(A53, k[K3 + c], Math.fma(A52, k[K2 + c], A51 * k[c]))),
                    state[c]);
        }
        equations.rates(stage, axis, k, K5);
        for (int c = 0; c < STAGE_STATE; c++) {
            stage[c] = Math.fma(
                    h,
                    Math.fma(
                            A65,
                            k[K5 + c],
                            Math.fma(A64, k[K4 + c], Math.fma(A63, k[K3 + c], Math.fma(A62, k[K2 + c], A61 * k[c])))),
                    state[c]);
        }
        equations.rates(stage, axis, k, K6);
        for (int c = 0; c < STAGE_STATE; c++) {
            stage[c] = Math.fma(
                    h,
                    Math.fma(
                            A76,
                            k[K6 + c],
                            Math.fma(
                                    A75,
                                    k[K5 + c],
                                    Math.fma(
                                            A74,
                                            k[K4 + c],
                                            Math.fma(A73, k[K3 + c], Math.fma(A72, k[K2 + c], A71 * k[c]))))),
                    state[c]);
        }
        equations.rates(stage, axis, k, K7);
        for (int c = 0; c < STAGE_STATE; c++) {
            stage[c] = Math.fma(
                    h,
                    Math.fma(
                            A86,
                            k[K6 + c],
                            Math.fma(
                                    A85,
                                    k[K5 + c],
                                    Math.fma(
                                            A84,
                                            k[K4 + c],
                                            Math.fma(A83, k[K3 + c], Math.fma(A82, k[K2 + c], A81 * k[c]))))),
                    state[c]);
        }
        equations.rates(stage, axis, k, K8);
        // x and z are not carried by a stage, but their rates are. The second stage has no weight in either result.
        for (int c = 0; c < STATE; c++) {
            next[c] = Math.fma(
                    h,
                    Math.fma(
                            B8,
                            k[K8 + c],
                            Math.fma(
                                    B7,
                                    k[K7 + c],
                                    Math.fma(
                                            B6,
                                            k[K6 + c],
                                            Math.fma(
                                                    B5,
                                                    k[K5 + c],
                                                    Math.fma(B4, k[K4 + c], Math.fma(B3, k[K3 + c], B1 * k[c])))))),
                    state[c]);
            error[c] = h
                    * Math.fma(
                            E8,
                            k[K8 + c],
                            Math.fma(
                                    E7,
                                    k[K7 + c],
                                    Math.fma(
                                            E6,
                                            k[K6 + c],
                                            Math.fma(
                                                    E5,
                                                    k[K5 + c],
                                                    Math.fma(E4, k[K4 + c], Math.fma(E3, k[K3 + c], E1 * k[c]))))));
        }
        double velocity = Math.sqrt(error[VX] * error[VX] + error[VY] * error[VY] + error[VZ] * error[VZ]);
        double position = Math.sqrt(error[X] * error[X] + error[Y] * error[Y] + error[Z] * error[Z]);
        return position + velocity + equations.radius() * Math.abs(error[SPIN]);
    }

    // The lane form: the same operations in the same order, component by component over a whole block. A stage writes
    // the
    // first five numbers of the state where the force sum reads them. Each sum is one loop over all its components,
    // whose
    // offsets are constants: such loops the compiler of the virtual machine vectorises.

    /** Components that the lane form needs in a block, behind those of the force sum. */
    static final int LANE_COMPONENTS = 7 * (3 + STAGES) + 1;

    /** Where the states at the start of the step begin: {@code vx, vy, vz, spin, y, x, z}. */
    static final int START_AT = Lanes.FREE_AT;

    /** Where the steps begin, once for each of the seven numbers of a state [s]. */
    static final int STEP_AT = START_AT + 7 * Lanes.STRIDE;

    /** Where the states at the end of the step begin: where the force sum reads them. */
    static final int NEXT_AT = Lanes.STATE_AT;

    /** Where the rates at the start of the step begin, in the order of the state. */
    static final int K1_AT = STEP_AT + 7 * Lanes.STRIDE;

    private static final int K2_AT = K1_AT + 7 * Lanes.STRIDE;
    private static final int K3_AT = K2_AT + 7 * Lanes.STRIDE;
    private static final int K4_AT = K3_AT + 7 * Lanes.STRIDE;
    private static final int K5_AT = K4_AT + 7 * Lanes.STRIDE;
    private static final int K6_AT = K5_AT + 7 * Lanes.STRIDE;
    private static final int K7_AT = K6_AT + 7 * Lanes.STRIDE;
    private static final int K8_AT = K7_AT + 7 * Lanes.STRIDE;
    private static final int DIFFERENCE_AT = K8_AT + 7 * Lanes.STRIDE;

    /** Where the error estimates of the steps begin, see the scalar form [m]. */
    static final int ERROR_AT = DIFFERENCE_AT + 7 * Lanes.STRIDE;

    /** The height comes last, and is left out where no wind depends on it. */
    private static final int STAGE_LENGTH = STAGE_STATE * Lanes.STRIDE;

    private static final int STAGE_LENGTH_WITHOUT_HEIGHT = Y * Lanes.STRIDE;
    private static final int STATE_LENGTH = STATE * Lanes.STRIDE;

    /**
     * One step of every lane, each of its own length.
     *
     * @param equations the force sum
     * @param lanes holds the states at the start, the rates there and the steps; receives the states at the end and the error
     *     estimates
     */
    static void step(FlightEquations equations, Lanes lanes) {
        double[] b = lanes.block();
        int length = lanes.ownWind() ? STAGE_LENGTH_WITHOUT_HEIGHT : STAGE_LENGTH;
        stage2(b, length);
        equations.rates(lanes);
        keepRates(b, K2_AT);
        stage3(b, length);
        equations.rates(lanes);
        keepRates(b, K3_AT);
        stage4(b, length);
        equations.rates(lanes);
        keepRates(b, K4_AT);
        stage5(b, length);
        equations.rates(lanes);
        keepRates(b, K5_AT);
        stage6(b, length);
        equations.rates(lanes);
        keepRates(b, K6_AT);
        stage7(b, length);
        equations.rates(lanes);
        keepRates(b, K7_AT);
        stage8(b, length);
        equations.rates(lanes);
        keepRates(b, K8_AT);
        end(b);
        difference(b);
        error(b, equations.radius());
    }

    /** Keeps the rates that the force sum has left in a block, those of the position included. */
    static void keepRates(double[] b, int at) {
        System.arraycopy(b, Lanes.RATES_AT, b, at, 4 * Lanes.STRIDE);
        System.arraycopy(b, Lanes.STATE_AT + VY * Lanes.STRIDE, b, at + Y * Lanes.STRIDE, Lanes.WIDTH);
        System.arraycopy(b, Lanes.STATE_AT + VX * Lanes.STRIDE, b, at + X * Lanes.STRIDE, Lanes.WIDTH);
        System.arraycopy(b, Lanes.STATE_AT + VZ * Lanes.STRIDE, b, at + Z * Lanes.STRIDE, Lanes.WIDTH);
    }

    private static void stage2(double[] b, int length) {
        for (int i = 0; i < length; i++) {
            b[Lanes.STATE_AT + i] = Math.fma(b[STEP_AT + i], A21 * b[K1_AT + i], b[START_AT + i]);
        }
    }

    private static void stage3(double[] b, int length) {
        for (int i = 0; i < length; i++) {
            b[Lanes.STATE_AT + i] =
                    Math.fma(b[STEP_AT + i], Math.fma(A32, b[K2_AT + i], A31 * b[K1_AT + i]), b[START_AT + i]);
        }
    }

    private static void stage4(double[] b, int length) {
        for (int i = 0; i < length; i++) {
            b[Lanes.STATE_AT + i] = Math.fma(
                    b[STEP_AT + i],
                    Math.fma(A43, b[K3_AT + i], Math.fma(A42, b[K2_AT + i], A41 * b[K1_AT + i])),
                    b[START_AT + i]);
        }
    }

    private static void stage5(double[] b, int length) {
        for (int i = 0; i < length; i++) {
            b[Lanes.STATE_AT + i] = Math.fma(
                    b[STEP_AT + i],
                    Math.fma(
                            A54,
                            b[K4_AT + i],
                            Math.fma(A53, b[K3_AT + i], Math.fma(A52, b[K2_AT + i], A51 * b[K1_AT + i]))),
                    b[START_AT + i]);
        }
    }

    private static void stage6(double[] b, int length) {
        for (int i = 0; i < length; i++) {
            b[Lanes.STATE_AT + i] = Math.fma(
                    b[STEP_AT + i],
                    Math.fma(
                            A65,
                            b[K5_AT + i],
                            Math.fma(
                                    A64,
                                    b[K4_AT + i],
                                    Math.fma(A63, b[K3_AT + i], Math.fma(A62, b[K2_AT + i], A61 * b[K1_AT + i])))),
                    b[START_AT + i]);
        }
    }

    private static void stage7(double[] b, int length) {
        for (int i = 0; i < length; i++) {
            b[Lanes.STATE_AT + i] = Math.fma(
                    b[STEP_AT + i],
                    Math.fma(
                            A76,
                            b[K6_AT + i],
                            Math.fma(
                                    A75,
                                    b[K5_AT + i],
                                    Math.fma(
                                            A74,
                                            b[K4_AT + i],
                                            Math.fma(
                                                    A73,
                                                    b[K3_AT + i],
                                                    Math.fma(A72, b[K2_AT + i], A71 * b[K1_AT + i]))))),
                    b[START_AT + i]);
        }
    }

    private static void stage8(double[] b, int length) {
        for (int i = 0; i < length; i++) {
            b[Lanes.STATE_AT + i] = Math.fma(
                    b[STEP_AT + i],
                    Math.fma(
                            A86,
                            b[K6_AT + i],
                            Math.fma(
                                    A85,
                                    b[K5_AT + i],
                                    Math.fma(
                                            A84,
                                            b[K4_AT + i],
                                            Math.fma(
                                                    A83,
                                                    b[K3_AT + i],
                                                    Math.fma(A82, b[K2_AT + i], A81 * b[K1_AT + i]))))),
                    b[START_AT + i]);
        }
    }

    private static void end(double[] b) {
        for (int i = 0; i < STATE_LENGTH; i++) {
            b[NEXT_AT + i] = Math.fma(
                    b[STEP_AT + i],
                    Math.fma(
                            B8,
                            b[K8_AT + i],
                            Math.fma(
                                    B7,
                                    b[K7_AT + i],
                                    Math.fma(
                                            B6,
                                            b[K6_AT + i],
                                            Math.fma(
                                                    B5,
                                                    b[K5_AT + i],
                                                    Math.fma(
                                                            B4,
                                                            b[K4_AT + i],
                                                            Math.fma(B3, b[K3_AT + i], B1 * b[K1_AT + i])))))),
                    b[START_AT + i]);
        }
    }

    private static void difference(double[] b) {
        for (int i = 0; i < STATE_LENGTH; i++) {
            b[DIFFERENCE_AT + i] = b[STEP_AT + i]
                    * Math.fma(
                            E8,
                            b[K8_AT + i],
                            Math.fma(
                                    E7,
                                    b[K7_AT + i],
                                    Math.fma(
                                            E6,
                                            b[K6_AT + i],
                                            Math.fma(
                                                    E5,
                                                    b[K5_AT + i],
                                                    Math.fma(
                                                            E4,
                                                            b[K4_AT + i],
                                                            Math.fma(E3, b[K3_AT + i], E1 * b[K1_AT + i]))))));
        }
    }

    private static void error(double[] b, double radius) {
        for (int i = 0; i < Lanes.WIDTH; i++) {
            double x = b[DIFFERENCE_AT + VX * Lanes.STRIDE + i];
            double y = b[DIFFERENCE_AT + VY * Lanes.STRIDE + i];
            double z = b[DIFFERENCE_AT + VZ * Lanes.STRIDE + i];
            b[ERROR_AT + i] = Math.sqrt(x * x + y * y + z * z);
        }
        for (int i = 0; i < Lanes.WIDTH; i++) {
            double x = b[DIFFERENCE_AT + X * Lanes.STRIDE + i];
            double y = b[DIFFERENCE_AT + Y * Lanes.STRIDE + i];
            double z = b[DIFFERENCE_AT + Z * Lanes.STRIDE + i];
            double position = Math.sqrt(x * x + y * y + z * z);
            b[ERROR_AT + i] =
                    position + b[ERROR_AT + i] + radius * Math.abs(b[DIFFERENCE_AT + SPIN * Lanes.STRIDE + i]);
        }
    }
}
