package fermata.decoder.cube;

import java.util.HashMap;
import java.util.Map;

/**
 * Where the 54 stickers sit: the geometry from which cubies, turns and rotations are derived.
 *
 * <p>A sticker has the number {@code 9 * face + 3 * row + column}, row by row as seen from outside; U is seen with B
 * at its top, D with F at its top, the other four with U at their top. The number is zero-based; published tables
 * that count from one name the same places.
 *
 * @param position which of the 27 places the sticker's cubie fills, each coordinate -1, 0 or 1
 * @param face the face the sticker looks out of
 */
record Sticker(Vector position, Face face) {
    static final int COUNT = 54;

    private static final Sticker[] BY_NUMBER = new Sticker[COUNT];
    private static final Map<Sticker, Integer> NUMBERS = new HashMap<>();

    static {
        for (int number = 0; number < COUNT; number++) {
            BY_NUMBER[number] = locate(Face.values()[number / 9], number % 9 / 3, number % 3);
            NUMBERS.put(BY_NUMBER[number], number);
        }
    }

    static Sticker ofNumber(int number) {
        return BY_NUMBER[number];
    }

    int number() {
        return NUMBERS.get(this);
    }

    private boolean turnsWith(Face turned) {
        return position.dot(turned.normal) == 1;
    }

    private Sticker quarterClockwiseAbout(Face axis) {
        return new Sticker(
                position.quarterClockwiseAbout(axis.normal),
                Face.withNormal(face.normal.quarterClockwiseAbout(axis.normal)));
    }

    /** For each place, the place its sticker came from when {@code turned} made one clockwise quarter. */
    static int[] sourcesOfQuarterTurn(Face turned) {
        int[] sources = new int[COUNT];
        for (int number = 0; number < COUNT; number++) {
            Sticker sticker = BY_NUMBER[number];
            int target = sticker.turnsWith(turned)
                    ? sticker.quarterClockwiseAbout(turned).number()
                    : number;
            sources[target] = number;
        }
        return sources;
    }

    private static Sticker locate(Face face, int row, int column) {
        int right = column - 1;
        int down = row - 1;
        Vector position = switch (face) {
            case U -> new Vector(right, 1, down);
            case D -> new Vector(right, -1, -down);
            case F -> new Vector(right, -down, 1);
            case B -> new Vector(-right, -down, -1);
            case R -> new Vector(1, -down, -right);
            case L -> new Vector(-1, -down, right);
        };
        return new Sticker(position, face);
    }
}
