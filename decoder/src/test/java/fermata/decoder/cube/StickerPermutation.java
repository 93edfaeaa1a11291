package fermata.decoder.cube;

import fermata.decoder.orientation.Orientation;

/** A state and a hold as one permutation of the 54 places the solver sees, for checks against group theory. */
final class StickerPermutation {
    private StickerPermutation() {}

    /** For each place seen, the place (seen on a solved cube held by its centres) where its sticker began. */
    static int[] sources(CubeState state, Orientation hold) {
        int[] onCore = new int[Sticker.COUNT];
        for (Face face : Face.values()) {
            onCore[9 * face.ordinal() + 4] = 9 * face.ordinal() + 4;
        }
        for (Corner place : Corner.values()) {
            for (int which = 0; which < 3; which++) {
                onCore[place.sticker((which + state.twistAt(place)) % 3)] =
                        state.cornerAt(place).sticker(which);
            }
        }
        for (Edge place : Edge.values()) {
            for (int which = 0; which < 2; which++) {
                onCore[place.sticker(which ^ state.flipAt(place))] =
                        state.edgeAt(place).sticker(which);
            }
        }
        int[] seen = new int[Sticker.COUNT];
        for (int place = 0; place < Sticker.COUNT; place++) {
            seen[place] = onCore[hold.placeSeen(place)];
        }
        return seen;
    }
}
