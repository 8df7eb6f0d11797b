package dev.teeward.flight.aero;

import java.util.Objects;

/** Drag from one source and lift from another; measured where both are. */
final class CombinedAerodynamics implements AerodynamicModel {
    private final DragLaw drag;
    private final LiftLaw lift;
    private final ModelDomain domain;

    CombinedAerodynamics(DragLaw drag, LiftLaw lift) {
        this.drag = Objects.requireNonNull(drag, "drag");
        this.lift = Objects.requireNonNull(lift, "lift");
        this.domain = drag.domain()
                .intersection(lift.domain())
                .orElseThrow(() -> new IllegalArgumentException(
                        "drag and lift must have been measured in some state in common, but drag covers "
                                + drag.domain() + " and lift " + lift.domain()
                                + "; a law of your own may state another domain()"));
    }

    @Override
    public double dragCoefficient(double re, double s) {
        return drag.dragCoefficient(re, s);
    }

    @Override
    public double liftCoefficient(double re, double s) {
        return lift.liftCoefficient(re, s);
    }

    @Override
    public boolean smooth() {
        return drag.smooth() && lift.smooth();
    }

    @Override
    public ModelDomain domain() {
        return domain;
    }

    @Override
    public String reference() {
        return "drag: " + drag.reference() + "; lift: " + lift.reference();
    }

    @Override
    public String toString() {
        return reference();
    }
}
