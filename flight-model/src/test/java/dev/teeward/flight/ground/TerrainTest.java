package dev.teeward.flight.ground;

/** A terrain of one's own, with the one method that it must have. */
class TerrainTest extends TerrainContract {
    @Override
    protected Terrain terrain() {
        return (x, z) -> 2.0 * Math.sin(x / 40.0) * Math.cos(z / 30.0) - 0.01 * Math.abs(x);
    }
}
