package dev.teeward.flight.aero;

/** The promises of every model; its values are checked in {@link PublishedModelsTest}. */
class CombinedAerodynamicsTest extends AerodynamicModelContract {
    @Override
    protected AerodynamicModel model() {
        return AerodynamicModel.combining(Williams1959.of(), Lyu2018.of());
    }
}
