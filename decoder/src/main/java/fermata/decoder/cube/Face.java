package fermata.decoder.cube;

/**
 * One of the six faces, by its centre. The declaration order U R F D L B is the order of faces in every facelet
 * string.
 *
 * <p>The unit normal of each face uses x to the right, y up and z towards the solver.
 */
public enum Face {
    U(0, 1, 0),
    R(1, 0, 0),
    F(0, 0, 1),
    D(0, -1, 0),
    L(-1, 0, 0),
    B(0, 0, -1);

    private static final Face[] ALL = values();

    final Vector normal;

    Face(int x, int y, int z) {
        normal = new Vector(x, y, z);
    }

    /** The face across the cube: U for D, R for L, F for B and back. */
    public Face opposite() {
        return ALL[(ordinal() + 3) % 6];
    }

    /** Whether both faces turn about the same axis, so that their turns commute. */
    public boolean sharesAxisWith(Face other) {
        return ordinal() % 3 == other.ordinal() % 3;
    }

    /** The axis the face turns about. */
    public Axis axis() {
        return Axis.values()[ordinal() % 3];
    }

    /** The face of an upper-case letter. */
    public static Face of(char letter) {
        for (Face face : ALL) {
            if (face.name().charAt(0) == letter) {
                return face;
            }
        }
        throw new IllegalArgumentException("face '" + letter + "' is none of U R F D L B");
    }

    static Face withNormal(Vector normal) {
        for (Face face : ALL) {
            if (face.normal.equals(normal)) {
                return face;
            }
        }
        throw new IllegalArgumentException("no face has the normal " + normal);
    }
}
