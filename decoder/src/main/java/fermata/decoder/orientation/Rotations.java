package fermata.decoder.orientation;

import fermata.decoder.cube.Face;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The rotation group as tables: found once from x, y and z, breadth first, so that every word is a shortest one. */
final class Rotations {
    /** For x, y and z, the centres at U R F D L B after that rotation of the identity: like R, like U, like F. */
    private static final Face[][] LETTERS = {
        {Face.F, Face.R, Face.D, Face.B, Face.L, Face.U},
        {Face.U, Face.B, Face.R, Face.D, Face.F, Face.L},
        {Face.L, Face.U, Face.F, Face.R, Face.D, Face.B},
    };

    private static final String NAMES = "xyz";

    private Rotations() {}

    static Orientation[] enumerate() {
        List<Orientation> found = new ArrayList<>();
        found.add(new Orientation(0, Face.values(), ""));
        for (int next = 0; next < found.size(); next++) {
            Orientation from = found.get(next);
            for (int letter = 0; letter < LETTERS.length; letter++) {
                Face[] at = from.coreAt();
                for (int quarters = 1; quarters <= 3; quarters++) {
                    at = multiply(at, LETTERS[letter]);
                    addIfNew(found, at, from.word(), letterWord(letter, quarters));
                }
            }
        }
        return found.toArray(new Orientation[0]);
    }

    private static void addIfNew(List<Orientation> found, Face[] at, String before, String last) {
        if (indexOf(found, at) < 0) {
            found.add(new Orientation(found.size(), at, before.isEmpty() ? last : before + " " + last));
        }
    }

    private static String letterWord(int letter, int quarters) {
        return NAMES.charAt(letter) + (quarters == 1 ? "" : quarters == 2 ? "2" : "'");
    }

    private static Face[] multiply(Face[] first, Face[] second) {
        Face[] product = new Face[6];
        for (int hand = 0; hand < 6; hand++) {
            product[hand] = first[second[hand].ordinal()];
        }
        return product;
    }

    private static int indexOf(List<Orientation> among, Face[] at) {
        for (Orientation orientation : among) {
            if (Arrays.equals(orientation.coreAt(), at)) {
                return orientation.index();
            }
        }
        return -1;
    }

    static Orientation product(Orientation first, Orientation second) {
        return Orientation.ofIndex(Tables.PRODUCT[first.index()][second.index()]);
    }

    static Orientation inverse(Orientation orientation) {
        return Orientation.ofIndex(Tables.INVERSE[orientation.index()]);
    }

    static Orientation turning(Face face, int quarters) {
        return Orientation.ofIndex(Tables.TURNING[face.ordinal()][quarters]);
    }

    /** Filled on first use, when the 24 instances exist. */
    private static final class Tables {
        static final int[][] PRODUCT = new int[24][24];
        static final int[] INVERSE = new int[24];
        static final int[][] TURNING = new int[6][4];

        static {
            for (Orientation first : Orientation.all()) {
                for (Orientation second : Orientation.all()) {
                    int product = indexOf(Orientation.all(), multiply(first.coreAt(), second.coreAt()));
                    PRODUCT[first.index()][second.index()] = product;
                    if (product == 0) {
                        INVERSE[first.index()] = second.index();
                    }
                }
            }
            fillTurning(Face.R, LETTERS[0]);
            fillTurning(Face.U, LETTERS[1]);
            fillTurning(Face.F, LETTERS[2]);
        }

        private static void fillTurning(Face face, Face[] like) {
            int quarter = indexOf(Orientation.all(), like);
            int[] clockwise = TURNING[face.ordinal()];
            for (int quarters = 1; quarters <= 3; quarters++) {
                clockwise[quarters] = PRODUCT[clockwise[quarters - 1]][quarter];
            }
            for (int quarters = 1; quarters <= 3; quarters++) {
                TURNING[face.opposite().ordinal()][quarters] = clockwise[4 - quarters];
            }
        }
    }
}
