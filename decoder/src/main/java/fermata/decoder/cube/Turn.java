package fermata.decoder.cube;

import java.util.Objects;

/**
 * A turn of one outer face against the core, as a cube with sensors in its centres feels it.
 *
 * @param face the face that turned
 * @param quarters clockwise quarters seen at that face: 1, 2 (half) or 3 (counter-clockwise)
 */
public record Turn(Face face, int quarters) {
    private static final Turn[] ALL = new Turn[18];

    static {
        for (Face face : Face.values()) {
            for (int quarters = 1; quarters <= 3; quarters++) {
                ALL[face.ordinal() * 3 + quarters - 1] = new Turn(face, quarters);
            }
        }
    }

    public Turn {
        Objects.requireNonNull(face, "face");
        if (quarters < 1 || quarters > 3) {
            throw new IllegalArgumentException("quarters " + quarters + " of a turn is not in 1..3");
        }
    }

    /** The shared instance; {@code quarters} may be any whole number that is not a multiple of four. */
    public static Turn of(Face face, int quarters) {
        int clockwise = Math.floorMod(quarters, 4);
        if (clockwise == 0) {
            throw new IllegalArgumentException(quarters + " quarters leave face " + face + " where it was: no turn");
        }
        return ALL[face.ordinal() * 3 + clockwise - 1];
    }

    /** All 18 turns in the order U U2 U' R R2 R' ...: {@code all()[turn.index()]} is the turn. */
    public static Turn[] all() {
        return ALL.clone();
    }

    /** The turn of an {@link #index()}. */
    public static Turn ofIndex(int index) {
        return ALL[index];
    }

    /** Reads one face turn in WCA notation (Article 12a1): a face letter, then nothing, {@code 2} or {@code '}. */
    public static Turn parse(String text) {
        int quarters = switch (text.length() < 2 ? "" : text.substring(1)) {
            case "" -> 1;
            case "2", "2'" -> 2;
            case "'" -> 3;
            default -> 0;
        };
        if (text.isEmpty() || quarters == 0) {
            throw new IllegalArgumentException(
                    "turn \"" + text + "\" is not a face letter followed by nothing, 2 or an apostrophe");
        }
        return of(Face.of(text.charAt(0)), quarters);
    }

    /** A number in 0..17: three times the face's place, plus quarters minus one. */
    public int index() {
        return face.ordinal() * 3 + quarters - 1;
    }

    /** The turn that takes this one back. */
    public Turn inverse() {
        return of(face, 4 - quarters);
    }

    /** Whether the order of the two turns does not matter. */
    public boolean commutesWith(Turn other) {
        return face.sharesAxisWith(other.face);
    }

    /** WCA notation: {@code R}, {@code R2} or {@code R'}. */
    @Override
    public String toString() {
        return face + (quarters == 1 ? "" : quarters == 2 ? "2" : "'");
    }
}
