package fermata.decoder.cube;

/** A small integer vector: where a cubie sits, or which way a sticker looks. */
record Vector(int x, int y, int z) {
    Vector plus(Vector other) {
        return new Vector(x + other.x, y + other.y, z + other.z);
    }

    int dot(Vector other) {
        return x * other.x + y * other.y + z * other.z;
    }

    private Vector cross(Vector other) {
        return new Vector(y * other.z - z * other.y, z * other.x - x * other.z, x * other.y - y * other.x);
    }

    Vector times(int factor) {
        return new Vector(x * factor, y * factor, z * factor);
    }

    /**
     * This vector turned a quarter clockwise, seen from outside along {@code axis} (a unit vector). Rodrigues'
     * formula for an angle of -90 degrees: the part along the axis stays, the rest becomes its negative cross
     * product.
     */
    Vector quarterClockwiseAbout(Vector axis) {
        return axis.times(axis.dot(this)).plus(axis.cross(this).times(-1));
    }
}
