package fermata.decoder.cube;

import java.util.List;

/**
 * The twelve edge places and, by the same names, the edge cubies that belong there.
 *
 * <p>The first face is the place's reference sticker for flip: the U or D face, or F or B in the middle layer. By
 * this choice only quarter turns of F and B change a flip.
 */
public enum Edge {
    UR(Face.U, Face.R),
    UF(Face.U, Face.F),
    UL(Face.U, Face.L),
    UB(Face.U, Face.B),
    DR(Face.D, Face.R),
    DF(Face.D, Face.F),
    DL(Face.D, Face.L),
    DB(Face.D, Face.B),
    FR(Face.F, Face.R),
    FL(Face.F, Face.L),
    BL(Face.B, Face.L),
    BR(Face.B, Face.R);

    private static final Edge[] ALL = values();

    private final List<Face> faces;
    private final int[] stickers;

    Edge(Face first, Face second) {
        this.faces = List.of(first, second);
        Vector position = first.normal.plus(second.normal);
        this.stickers = faces.stream()
                .mapToInt(face -> new Sticker(position, face).number())
                .toArray();
    }

    static Edge ofIndex(int index) {
        return ALL[index];
    }

    /** The two faces, the reference face first. */
    public List<Face> faces() {
        return faces;
    }

    /** Whether the edge touches the face. */
    public boolean touches(Face face) {
        return faces.contains(face);
    }

    /** The number (0..53) of this place's sticker number {@code which} (0 is the reference sticker, 1 the other). */
    public int sticker(int which) {
        return stickers[which];
    }
}
