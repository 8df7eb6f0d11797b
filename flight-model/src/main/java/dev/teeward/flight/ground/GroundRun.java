package dev.teeward.flight.ground;

import dev.teeward.flight.ground.RollOut.Phase;
import dev.teeward.flight.ground.RollOut.Point;
import dev.teeward.quantity.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * One ball on the ground, from landing to rest: see {@link Ground} for the rules. Mutable; one for each run.
 *
 * <p>Hops are parabolas whose end is found to 1e-12 s. Skid and roll are integrated with the midpoint rule and the classical
 * Runge-Kutta rule, in steps so short that a closed form is met to 0.1 mm.
 */
final class GroundRun {
    private static final double TIME_LIMIT = 60.0;
    private static final int MOST_BOUNCES = 2_000;
    private static final int HOP_POINTS = 8;
    private static final double SAMPLING = 0.1;

    /** The speed below which a roll over curved ground no longer needs the balance of energy [m/s]. */
    private static final double SLOW = 0.01;

    /** The slip below which there is none [m/s]. */
    private static final double NO_SLIP = 1e-5;

    private final Ground ground;
    private final Terrain terrain;
    private final double stopHeight;
    private final double radius;
    private final double k;
    private final double gravity;
    private final double[] place = new double[3];
    private final double[] motion = new double[6];
    private final double[] normal = new double[3];
    private final double[] before = new double[3];
    private final List<Point> path = new ArrayList<>();
    private double time;
    private double sampled;

    GroundRun(Ground ground, Terrain terrain, double stopHeight, double radius, double k, double gravity) {
        this.ground = ground;
        this.terrain = terrain;
        this.stopHeight = stopHeight;
        this.radius = radius;
        this.k = k;
        this.gravity = gravity;
    }

    RollOut run(double[] position, double[] velocity, double[] spin) {
        System.arraycopy(position, 0, place, 0, 3);
        System.arraycopy(velocity, 0, motion, 0, 3);
        System.arraycopy(spin, 0, motion, 3, 3);
        List<Warning> warnings = new ArrayList<>(0);
        terrain.normal(place[0], place[2], normal);
        boolean known = FirstImpact.judge(ground, motion, -dot(), rises(-dot()), warnings);
        int bounces = bounce();
        int rollStart = path.size();
        settle();
        boolean rests = false;
        do {
            add(Phase.SKID);
            if (skid()) {
                add(Phase.ROLL);
                rests = roll();
            }
        } while (!rests && time < TIME_LIMIT);
        place[1] = terrain.elevation(place[0], place[2]);
        add(rests ? Phase.REST : path.get(path.size() - 1).phase());
        if (!rests) {
            warnings.add(Warning.of("does-not-stop", whyItMoves()));
        }
        return new RollOut(path, bounces, rollStart, known, warnings);
    }

    private String whyItMoves() {
        terrain.normal(place[0], place[2], normal);
        double slope = Math.toDegrees(Math.acos(Math.min(1.0, normal[1])));
        double holding = Math.toDegrees(Math.atan(ground.turf().rollingResistance()));
        String form = slope > holding
                ? "the ground is %.2f deg steep there, and the turf holds a ball that has stopped on slopes up to %.2f deg only"
                : "it has not slowed down to a stop yet, though where it is, %.2f deg steep, the turf would hold a ball that"
                        + " has stopped, as on slopes up to %.2f deg";
        double speed = Math.sqrt(motion[0] * motion[0] + motion[1] * motion[1] + motion[2] * motion[2]);
        return String.format(
                Locale.ROOT,
                "the ball still moves at %.3f m/s when it is followed no longer, %.0f s after coming down: " + form,
                speed,
                time,
                slope,
                holding);
    }

    private void add(Phase phase) {
        path.add(new Point(time, place[0], place[1], place[2], phase));
        sampled = time;
    }

    /** Bounces until the next one would not rise above the stop height; leaves the ball in place with its last motion. */
    private int bounce() {
        int bounces = 0;
        while (bounces < MOST_BOUNCES && time < TIME_LIMIT) {
            terrain.normal(place[0], place[2], normal);
            if (!rises(-dot())) {
                return bounces;
            }
            add(Phase.BOUNCE);
            ground.bounce().bounce(motion, normal, ground.turf(), radius, k);
            bounces++;
            if (!rises(dot())) {
                return bounces;
            }
            hop();
        }
        return bounces;
    }

    /** Whether a speed away from the ground would carry the ball to the stop height. */
    private boolean rises(double speed) {
        return speed > 0.0 && speed * speed / (2.0 * gravity * normal[1]) >= stopHeight;
    }

    /** The velocity along the normal. */
    private double dot() {
        return motion[0] * normal[0] + motion[1] * normal[1] + motion[2] * normal[2];
    }

    /** A parabola to where it meets the ground again. */
    private void hop() {
        // Over a plane the parabola and the ground part and meet after twice the speed over the pull.
        double whole = 2.0 * dot() / (normal[1] * gravity);
        double end = terrain instanceof PlaneTerrain ? whole : meeting(whole / HOP_POINTS);
        double x = place[0];
        double y = place[1];
        double z = place[2];
        for (int i = 1; i < HOP_POINTS; i++) {
            double t = end * i / HOP_POINTS;
            path.add(new Point(
                    time + t,
                    x + motion[0] * t,
                    y + motion[1] * t - gravity * t * t / 2.0,
                    z + motion[2] * t,
                    Phase.BOUNCE));
        }
        place[0] = x + motion[0] * end;
        place[2] = z + motion[2] * end;
        place[1] = terrain.elevation(place[0], place[2]);
        motion[1] -= gravity * end;
        time += end;
    }

    /** When the parabola meets a terrain without closed form, looked for in steps. */
    private double meeting(double step) {
        double from = step / 1024.0;
        double to = from;
        while (to < TIME_LIMIT) {
            to = from + step;
            if (gap(to) <= 0.0) {
                break;
            }
            from = to;
        }
        return root(from, to);
    }

    private double gap(double t) {
        return place[1]
                + motion[1] * t
                - gravity * t * t / 2.0
                - terrain.elevation(place[0] + motion[0] * t, place[2] + motion[2] * t);
    }

    /** Bisection, which needs nothing of the terrain but its continuity. */
    private double root(double above, double below) {
        double low = above;
        double high = below;
        while (high - low > 1e-12 * high) {
            double middle = (low + high) / 2.0;
            if (middle <= low || middle >= high) {
                break;
            }
            if (gap(middle) > 0.0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    /** Takes away what moves the ball into or out of the ground. */
    private void settle() {
        terrain.normal(place[0], place[2], normal);
        double out = dot();
        for (int i = 0; i < 3; i++) {
            motion[i] -= out * normal[i];
        }
    }

    /**
     * Slides until the contact point is at rest and friction can keep it there, and says whether it came to that: midpoint rule,
     * each step at most a quarter of the time in which the slip would change by all of itself.
     */
    private boolean skid() {
        double friction = ground.turf().friction();
        double[] slip = new double[3];
        while (time < TIME_LIMIT) {
            double size = slip(slip);
            if (size < NO_SLIP) {
                if (grips()) {
                    for (int i = 0; i < 3; i++) {
                        motion[i] -= slip[i] * k / (1.0 + k);
                    }
                    return true;
                }
                size = downhill(slip);
            }
            double h = Math.min(0.005, Math.max(size / change(slip, size, friction) / 4.0, 1e-6));
            double[] start = motion.clone();
            slide(slip, size, friction, h / 2.0, start);
            double halfX = motion[0];
            double halfZ = motion[2];
            size = slip(slip);
            slide(slip, size, friction, h, start);
            move(halfX * h, halfZ * h, h);
        }
        return false;
    }

    /**
     * Whether the turf keeps the contact point at rest. A ball that rolls freely down a slope a needs the friction {@code g sin(a)
     * k/(1 + k)}; the load allows {@code mu g cos(a)}. The resistance, left out while the ball slides, is left out here as well.
     */
    private boolean grips() {
        double steepness = Math.sqrt(Math.max(0.0, 1.0 - normal[1] * normal[1]));
        return steepness * k / (1.0 + k) <= ground.turf().friction() * normal[1];
    }

    /** A slip that begins: the contact point gives way downhill. */
    private double downhill(double[] slip) {
        double steepness = Math.sqrt(1.0 - normal[1] * normal[1]);
        slip[0] = NO_SLIP * normal[1] * normal[0] / steepness;
        slip[1] = -NO_SLIP * steepness;
        slip[2] = NO_SLIP * normal[1] * normal[2] / steepness;
        return NO_SLIP;
    }

    /** How fast the slip changes: by gravity along the ground, and by friction on the speed and on the spin. */
    private double change(double[] slip, double size, double friction) {
        double pull = gravity * normal[1];
        double scale = friction * pull * (1.0 + 1.0 / k) / size;
        double dx = pull * normal[0] - scale * slip[0];
        double dy = pull * normal[1] - gravity - scale * slip[1];
        double dz = pull * normal[2] - scale * slip[2];
        return Math.sqrt(dx * dx + dy * dy + dz * dz);
    }

    private double slip(double[] slip) {
        slip[0] = motion[0] - radius * (motion[4] * normal[2] - motion[5] * normal[1]);
        slip[1] = motion[1] - radius * (motion[5] * normal[0] - motion[3] * normal[2]);
        slip[2] = motion[2] - radius * (motion[3] * normal[1] - motion[4] * normal[0]);
        return Math.sqrt(slip[0] * slip[0] + slip[1] * slip[1] + slip[2] * slip[2]);
    }

    private void slide(double[] slip, double size, double friction, double h, double[] before) {
        double scale = size > 0.0 ? friction * gravity * normal[1] / size : 0.0;
        double pull = gravity * normal[1];
        motion[0] = before[0] + h * (pull * normal[0] - scale * slip[0]);
        motion[1] = before[1] + h * (pull * normal[1] - gravity - scale * slip[1]);
        motion[2] = before[2] + h * (pull * normal[2] - scale * slip[2]);
        double turn = h * scale / (k * radius);
        motion[3] = before[3] + turn * (normal[1] * slip[2] - normal[2] * slip[1]);
        motion[4] = before[4] + turn * (normal[2] * slip[0] - normal[0] * slip[2]);
        motion[5] = before[5] + turn * (normal[0] * slip[1] - normal[1] * slip[0]);
    }

    private void move(double dx, double dz, double h) {
        place[0] += dx;
        place[2] += dz;
        place[1] = terrain.elevation(place[0], place[2]);
        time += h;
        settle();
        if (time - sampled >= SAMPLING) {
            add(Phase.SKID);
        }
    }

    /** Rolls until the ball rests; false if it does not, or gives way first. State: x, z and their rates. */
    private boolean roll() {
        double[] s = {place[0], place[2], motion[0], motion[2]};
        double[][] d = new double[4][4];
        double[] at = new double[4];
        boolean curved = !(terrain instanceof PlaneTerrain);
        while (time < TIME_LIMIT) {
            rates(s, d[0]);
            double speed = speed(s);
            if (!grips()) {
                break;
            }
            double rho = ground.turf().rollingResistance();
            boolean holds = Math.sqrt(1.0 - normal[1] * normal[1]) <= rho * normal[1];
            double deceleration = -(s[2] * d[0][2] + s[3] * d[0][3]) / Math.max(speed, 1e-12);
            if (holds && speed < 1e-9) {
                return true;
            }
            double h = curved ? 0.01 : 0.04;
            double elevation = curved ? terrain.elevation(s[0], s[1]) : 0.0;
            double braking = rho * gravity * normal[1] * speed;
            System.arraycopy(normal, 0, before, 0, 3);
            if (deceleration > 0.0) {
                double left = speed / deceleration;
                if (holds && left < 1e-3) {
                    // What is left is less than a micrometre or so: v^2 / (2 a).
                    finish(s, left);
                    return true;
                }
                h = Math.min(h, left / 4.0);
            }
            h = Math.max(h, 1e-4);
            step(s, d[0], at, h / 2.0);
            rates(at, d[1]);
            step(s, d[1], at, h / 2.0);
            rates(at, d[2]);
            step(s, d[2], at, h);
            rates(at, d[3]);
            for (int i = 0; i < 4; i++) {
                s[i] += h / 6.0 * (d[0][i] + 2.0 * d[1][i] + 2.0 * d[2][i] + d[3][i]);
            }
            if (curved) {
                turn(s, speed, elevation, braking, h);
            }
            time += h;
            place[0] = s[0];
            place[2] = s[1];
            if (time - sampled >= SAMPLING) {
                place[1] = terrain.elevation(s[0], s[1]);
                add(Phase.ROLL);
            }
        }
        leave(s);
        return false;
    }

    /** The motion of a ball that has rolled up to here: the contact point at rest, {@code spin = n x v / r}. */
    private void leave(double[] s) {
        terrain.normal(s[0], s[1], normal);
        place[1] = terrain.elevation(s[0], s[1]);
        motion[0] = s[2];
        motion[1] = -(normal[0] * s[2] + normal[2] * s[3]) / normal[1];
        motion[2] = s[3];
        motion[3] = (normal[1] * motion[2] - normal[2] * motion[1]) / radius;
        motion[4] = (normal[2] * motion[0] - normal[0] * motion[2]) / radius;
        motion[5] = (normal[0] * motion[1] - normal[1] * motion[0]) / radius;
    }

    /**
     * Turns the velocity into the ground at the end of a step. What the ground's curvature does to it has no work in it, so the
     * speed is that of the balance of energy: {@code (1 + k) v^2/2 + g y} falls by the work of the resistance alone.
     */
    private void turn(double[] s, double speed, double elevation, double braking, double h) {
        double rise = -(before[0] * s[2] + before[2] * s[3]) / before[1];
        terrain.normal(s[0], s[1], normal);
        double into = s[2] * normal[0] + rise * normal[1] + s[3] * normal[2];
        double vx = s[2] - into * normal[0];
        double vy = rise - into * normal[1];
        double vz = s[3] - into * normal[2];
        double size = Math.sqrt(vx * vx + vy * vy + vz * vz);
        double work = h * (braking + ground.turf().rollingResistance() * gravity * normal[1] * size) / 2.0;
        double left = speed * speed - 2.0 / (1.0 + k) * (gravity * (terrain.elevation(s[0], s[1]) - elevation) + work);
        // About the turning point the balance is the difference of two numbers that are nearly the same.
        if (left > SLOW * SLOW && size > SLOW) {
            double scale = Math.sqrt(left) / size;
            s[2] = vx * scale;
            s[3] = vz * scale;
        }
    }

    private void finish(double[] s, double left) {
        place[0] = s[0] + s[2] * left / 2.0;
        place[2] = s[1] + s[3] * left / 2.0;
        time += left;
    }

    private static void step(double[] s, double[] d, double[] at, double h) {
        for (int i = 0; i < 4; i++) {
            at[i] = s[i] + h * d[i];
        }
    }

    private double speed(double[] s) {
        double rise = -(normal[0] * s[2] + normal[2] * s[3]) / normal[1];
        return Math.sqrt(s[2] * s[2] + rise * rise + s[3] * s[3]);
    }

    /** The derivative of x, z and their rates for a ball that rolls. */
    private void rates(double[] s, double[] d) {
        terrain.normal(s[0], s[1], normal);
        double speed = speed(s);
        double load = gravity * normal[1];
        double resistance = speed > 1e-12 ? ground.turf().rollingResistance() * load / speed : 0.0;
        d[0] = s[2];
        d[1] = s[3];
        d[2] = (load * normal[0] - resistance * s[2]) / (1.0 + k);
        d[3] = (load * normal[2] - resistance * s[3]) / (1.0 + k);
    }
}
