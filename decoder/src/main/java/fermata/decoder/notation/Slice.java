package fermata.decoder.notation;

import fermata.decoder.cube.Face;

/** The middle slices. Their senses are common practice: the WCA Regulations have no slice notation. */
public enum Slice {
    M(Face.L),
    E(Face.D),
    S(Face.F);

    private final Face follows;

    Slice(Face follows) {
        this.follows = follows;
    }

    /** The face whose clockwise sense the slice follows. */
    public Face follows() {
        return follows;
    }
}
