package dev.teeward.flight.air;

/** A wind of one's own, with the two methods that it must have: a linear shear that stops at 50 m. */
class WindTest extends WindContract {
    @Override
    protected Wind wind() {
        return new Wind() {
            @Override
            public double alongTarget(double height) {
                return -0.1 * Math.max(0.0, Math.min(height, 50.0));
            }

            @Override
            public double towardsRight(double height) {
                return 2.0;
            }
        };
    }
}
