package dev.teeward.flight.aero;

/** The promises of every model; its values are checked in {@link PublishedModelsTest}. */
class Davies1949Test extends AerodynamicModelContract {
    @Override
    protected AerodynamicModel model() {
        return Davies1949.of();
    }
}
