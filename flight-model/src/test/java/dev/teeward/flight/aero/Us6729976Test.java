package dev.teeward.flight.aero;

/** The promises of every model; its values are checked in {@link PublishedModelsTest}. */
class Us6729976Test extends AerodynamicModelContract {
    @Override
    protected AerodynamicModel model() {
        return AerodynamicModel.combining(Us6729976.dragByReynoldsNumber(), Us6729976.liftBySpinRatio());
    }
}
