package fermata.decoder.notation;

import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;

/** Reads one move: layer count, letter, {@code w}, amount. */
final class MoveReader {
    private static final String FACES = "URFDLB";

    private final Cursor cursor;

    MoveReader(Cursor cursor) {
        this.cursor = cursor;
    }

    Move read() {
        int start = cursor.at();
        String layers = cursor.digits();
        if (!cursor.isAny("URFDLBurfdlbMESxyz")) {
            throw cursor.wordError(start, "is no move; expected one of U R F D L B, u r f d l b, M E S, x y z");
        }
        char letter = cursor.next();
        boolean wide = cursor.isAny("w");
        if (wide) {
            cursor.next();
        }
        if (wide && FACES.indexOf(letter) < 0) {
            throw cursor.wordError(start, "only U R F D L B are made wide by w");
        }
        if (!layers.isEmpty() && !(wide && layers.equals("2"))) {
            throw cursor.wordError(start, "of layer counts this puzzle has only 2Rw and the like (WCA 12a2)");
        }
        return move(letter, wide, readQuarters(start));
    }

    private int readQuarters(int start) {
        boolean primeBefore = cursor.skipPrime();
        String amount = cursor.digits();
        boolean primeAfter = cursor.skipPrime();
        if (primeBefore && primeAfter || !amount.isEmpty() && !amount.equals("2") && !amount.equals("3")) {
            throw cursor.wordError(start, "the amount is not nothing, 2 (half) or an apostrophe (counter-clockwise)");
        }
        int quarters = amount.isEmpty() ? 1 : amount.charAt(0) - '0';
        return primeBefore || primeAfter ? 4 - quarters : quarters;
    }

    private static Move move(char letter, boolean wide, int quarters) {
        return switch (letter) {
            case 'M', 'E', 'S' -> new Move.SliceTurn(Slice.valueOf(String.valueOf(letter)), quarters);
            case 'x' -> new Move.Rotation(Face.R, quarters);
            case 'y' -> new Move.Rotation(Face.U, quarters);
            case 'z' -> new Move.Rotation(Face.F, quarters);
            default -> {
                Face face = Face.of(Character.toUpperCase(letter));
                yield wide || Character.isLowerCase(letter)
                        ? new Move.Wide(face, quarters)
                        : new Move.Layer(Turn.of(face, quarters));
            }
        };
    }
}
