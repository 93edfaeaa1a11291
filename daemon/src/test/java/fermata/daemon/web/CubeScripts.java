package fermata.daemon.web;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.orientation.Orientation;

/** Asks a page's own modules about cubes, and the decoder about the same. */
final class CubeScripts {
    /** Colour, face colours -> the core face that the page holds down. */
    static final String HOLD_OF_COLOUR = "const done = arguments[2];"
            + "import('/site/cube/frame.mjs').then((frame) => done(frame.faceOfColour(arguments[0], arguments[1])));";

    /** Start, turns -> the letters after them, by the page. */
    static final String AFTER_TURNS = "const done = arguments[2];"
            + "import('/site/cube/cube.mjs').then((cube) =>"
            + " done(cube.statesFrom(arguments[0], arguments[1]).join(' ')));";

    /** Letters, core face held down -> the letters as the page shows them. */
    static final String SEEN = "const done = arguments[2];"
            + "import('/site/cube/frame.mjs').then((frame) =>"
            + " done(frame.holdWithDown(arguments[1]).look(arguments[0])));";

    /** The letters of the colours on the three unfolded faces of the drawn cube. */
    static final String DRAWN =
            "() => [...document.querySelectorAll('svg.cube .small')].map((letter) => letter.textContent).join('')";

    private static final String COLOUR_LETTERS = "WRGYOB";

    private CubeScripts() {}

    /** The letters of a cube held with a core face down, by the decoder. */
    static String seen(CubeState state, String down) {
        return holdWithDown(Face.of(down.charAt(0))).facelets(state);
    }

    /** The colour letters of left, back and below, as they are unfolded beside the cube. */
    static String hiddenFaces(String seen) {
        StringBuilder letters = new StringBuilder();
        for (Face face : new Face[] {Face.L, Face.B, Face.D}) {
            for (int spot = 0; spot < 9; spot++) {
                Face colour = Face.of(seen.charAt(9 * face.ordinal() + spot));
                letters.append(COLOUR_LETTERS.charAt(colour.ordinal()));
            }
        }
        return letters.toString();
    }

    /** The page turns the cube by the least rotation: z2, x', x, z or z', so that these are up and in front. */
    private static Orientation holdWithDown(Face down) {
        return Orientation.ofLetters(
                switch (down) {
                    case D -> "UF";
                    case U -> "DF";
                    case F -> "BU";
                    case B -> "FD";
                    case R -> "LF";
                    case L -> "RF";
                });
    }
}
