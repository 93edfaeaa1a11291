package fermata.decoder.cube;

import java.util.List;
import java.util.function.UnaryOperator;

/**
 * Facelet strings: 54 face letters in sticker order (faces U R F D L B, row by row; see {@link Sticker} for how each
 * face is seen), each the name of the face whose colour shows there.
 */
public final class Facelets {
    private Facelets() {}

    /**
     * Reads a facelet string with its centres in place.
     *
     * @throws IllegalArgumentException naming the place and what was expected, if the text has not 54 face letters,
     *     its centres are not U R F D L B, or some corner or edge does not exist, or exists twice. A state that
     *     exists but cannot be reached by turning is read; ask {@link CubeState#legality()}.
     */
    public static CubeState read(String letters) {
        if (letters.length() != Sticker.COUNT) {
            throw new IllegalArgumentException("a facelet string has 54 letters, this one " + letters.length());
        }
        Face[] shown = new Face[Sticker.COUNT];
        for (int number = 0; number < Sticker.COUNT; number++) {
            shown[number] = faceAt(letters, number);
        }
        for (Face face : Face.values()) {
            if (shown[9 * face.ordinal() + 4] != face) {
                throw new IllegalArgumentException("letter " + (9 * face.ordinal() + 5) + " is the centre of " + face
                        + " but reads " + shown[9 * face.ordinal() + 4]);
            }
        }
        return readCubies(shown);
    }

    private static Face faceAt(String letters, int number) {
        try {
            return Face.of(letters.charAt(number));
        } catch (IllegalArgumentException notAFace) {
            throw new IllegalArgumentException("letter " + (number + 1) + ": " + notAFace.getMessage(), notAFace);
        }
    }

    private static CubeState readCubies(Face[] shown) {
        int[] corners = new int[8];
        int[] twists = new int[8];
        for (Corner place : Corner.values()) {
            readCorner(place, shown, corners, twists);
        }
        int[] edges = new int[12];
        int[] flips = new int[12];
        for (Edge place : Edge.values()) {
            readEdge(place, shown, edges, flips);
        }
        return CubeState.ofCubies(corners, twists, edges, flips);
    }

    private static void readCorner(Corner place, Face[] shown, int[] corners, int[] twists) {
        List<Face> colours = List.of(shown[place.sticker(0)], shown[place.sticker(1)], shown[place.sticker(2)]);
        for (Corner cubie : Corner.values()) {
            for (int twist = 0; twist < 3; twist++) {
                // Twisted clockwise by t, a cubie shows its reference colour on the place's sticker number t.
                if (cubie.faces().get(0) == colours.get(twist)
                        && cubie.faces().get(1) == colours.get((twist + 1) % 3)
                        && cubie.faces().get(2) == colours.get((twist + 2) % 3)) {
                    corners[place.ordinal()] = cubie.ordinal();
                    twists[place.ordinal()] = twist;
                    return;
                }
            }
        }
        throw new IllegalArgumentException("no corner shows " + colours + ", as read at " + place);
    }

    private static void readEdge(Edge place, Face[] shown, int[] edges, int[] flips) {
        Face first = shown[place.sticker(0)];
        Face second = shown[place.sticker(1)];
        for (Edge cubie : Edge.values()) {
            int flip = cubie.faces().get(0) == first ? 0 : 1;
            if (cubie.faces().get(flip) == first && cubie.faces().get(1 - flip) == second) {
                edges[place.ordinal()] = cubie.ordinal();
                flips[place.ordinal()] = flip;
                return;
            }
        }
        throw new IllegalArgumentException("no edge shows [" + first + ", " + second + "], as read at " + place);
    }

    /**
     * For each of the 54 places as the solver sees them, the place that it is on the cube held by its centres.
     *
     * @param coreFaceAt for a face as seen, the centre that is there; must be a rotation of the whole cube
     */
    public static int[] placesSeen(UnaryOperator<Face> coreFaceAt) {
        int[] places = new int[Sticker.COUNT];
        for (int number = 0; number < Sticker.COUNT; number++) {
            Sticker seen = Sticker.ofNumber(number);
            Vector position = seen.position();
            Vector onCore = coreFaceAt
                    .apply(Face.R)
                    .normal
                    .times(position.x())
                    .plus(coreFaceAt.apply(Face.U).normal.times(position.y()))
                    .plus(coreFaceAt.apply(Face.F).normal.times(position.z()));
            places[number] = new Sticker(onCore, coreFaceAt.apply(seen.face())).number();
        }
        return places;
    }

    static String write(CubeState state) {
        char[] letters = new char[Sticker.COUNT];
        for (Face face : Face.values()) {
            letters[9 * face.ordinal() + 4] = face.name().charAt(0);
        }
        for (Corner place : Corner.values()) {
            List<Face> colours = state.cornerAt(place).faces();
            for (int which = 0; which < 3; which++) {
                letters[place.sticker((which + state.twistAt(place)) % 3)] =
                        colours.get(which).name().charAt(0);
            }
        }
        for (Edge place : Edge.values()) {
            List<Face> colours = state.edgeAt(place).faces();
            for (int which = 0; which < 2; which++) {
                letters[place.sticker(which ^ state.flipAt(place))] =
                        colours.get(which).name().charAt(0);
            }
        }
        return new String(letters);
    }
}
