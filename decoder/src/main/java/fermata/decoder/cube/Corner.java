package fermata.decoder.cube;

import java.util.List;

/**
 * The eight corner places and, by the same names, the corner cubies that belong there.
 *
 * <p>The faces are named clockwise from the U or D face; that first one is the place's reference sticker for twist.
 */
public enum Corner {
    URF(Face.U, Face.R, Face.F),
    UFL(Face.U, Face.F, Face.L),
    ULB(Face.U, Face.L, Face.B),
    UBR(Face.U, Face.B, Face.R),
    DFR(Face.D, Face.F, Face.R),
    DLF(Face.D, Face.L, Face.F),
    DBL(Face.D, Face.B, Face.L),
    DRB(Face.D, Face.R, Face.B);

    private static final Corner[] ALL = values();

    private final List<Face> faces;
    private final int[] stickers;

    Corner(Face first, Face second, Face third) {
        this.faces = List.of(first, second, third);
        Vector position = first.normal.plus(second.normal).plus(third.normal);
        this.stickers = faces.stream()
                .mapToInt(face -> new Sticker(position, face).number())
                .toArray();
    }

    static Corner ofIndex(int index) {
        return ALL[index];
    }

    /** The three faces, clockwise, the U or D face first. */
    public List<Face> faces() {
        return faces;
    }

    /** Whether the corner touches the face. */
    public boolean touches(Face face) {
        return faces.contains(face);
    }

    /** The number (0..53) of this place's sticker number {@code which} (0..2, clockwise from the reference sticker). */
    public int sticker(int which) {
        return stickers[which];
    }
}
