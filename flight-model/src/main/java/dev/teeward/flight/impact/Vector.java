package dev.teeward.flight.impact;

/** Three numbers along three perpendicular axes. */
record Vector(double x, double y, double z) {

    /** The unit vector at an elevation above the horizontal and an azimuth right of the target [rad]. */
    static Vector direction(double elevation, double azimuth) {
        return new Vector(
                Math.cos(elevation) * Math.cos(azimuth), Math.sin(elevation), Math.cos(elevation) * Math.sin(azimuth));
    }

    Vector plus(double factor, Vector other) {
        return new Vector(x + factor * other.x, y + factor * other.y, z + factor * other.z);
    }

    Vector times(double factor) {
        return new Vector(factor * x, factor * y, factor * z);
    }

    double dot(Vector other) {
        return x * other.x + y * other.y + z * other.z;
    }

    Vector cross(Vector other) {
        return new Vector(y * other.z - z * other.y, z * other.x - x * other.z, x * other.y - y * other.x);
    }

    double norm() {
        return Math.sqrt(dot(this));
    }

    /** The angle above the horizontal [rad]. */
    double elevation() {
        return Math.atan2(y, Math.sqrt(x * x + z * z));
    }

    /** The angle right of the target [rad]. */
    double azimuth() {
        return Math.atan2(z, x);
    }
}
