package fermata.decoder.notation;

import java.util.ArrayList;
import java.util.List;

/** Recursive descent over one text: groups, brackets and repeats; {@link MoveReader} reads the moves themselves. */
final class NotationReader {
    /** Deeper nesting is surely a mistake, and must not exhaust the stack. */
    private static final int DEEPEST = 32;
    /** Longer than any sequence a hand turns; keeps nested repeats from filling the memory. */
    private static final int LONGEST = 10_000;

    private final Cursor cursor;
    private final MoveReader moveReader;
    private int depth;

    NotationReader(String text) {
        this.cursor = new Cursor(text);
        this.moveReader = new MoveReader(cursor);
    }

    List<Move> read() {
        List<Move> moves = readUntilCloser();
        if (!cursor.atEnd()) {
            throw cursor.error(cursor.at(), cursor.at() + 1, "closes nothing that was opened");
        }
        return moves;
    }

    private List<Move> readUntilCloser() {
        List<Move> moves = new ArrayList<>();
        cursor.skipBlank();
        while (!cursor.atEnd() && !cursor.isAny(")],:")) {
            int start = cursor.at();
            if (cursor.isAny("(")) {
                moves.addAll(readGroup());
            } else if (cursor.isAny("[")) {
                moves.addAll(readBracket());
            } else {
                moves.add(moveReader.read());
            }
            if (moves.size() > LONGEST) {
                throw cursor.error(start, cursor.at(), "the sequence grows beyond " + LONGEST + " moves here");
            }
            cursor.skipBlank();
        }
        return moves;
    }

    private List<Move> readGroup() {
        int start = open();
        List<Move> inside = readUntilCloser();
        close(start, ")");
        int times = readRepeat();
        List<Move> once = cursor.skipPrime() ? new Sequence(inside).inverse().moves() : inside;
        List<Move> repeated = new ArrayList<>();
        for (int time = 0; time < times && repeated.size() <= LONGEST; time++) {
            repeated.addAll(once);
        }
        return repeated;
    }

    private List<Move> readBracket() {
        int start = open();
        Sequence first = new Sequence(readUntilCloser());
        if (!cursor.isAny(",:")) {
            throw cursor.error(start, cursor.at(), "a bracket needs two parts: [A: B] or [A, B]");
        }
        boolean conjugate = cursor.next() == ':';
        Sequence second = new Sequence(readUntilCloser());
        close(start, "]");
        Sequence forth = first.then(second).then(first.inverse());
        Sequence whole = conjugate ? forth : forth.then(second.inverse());
        return (cursor.skipPrime() ? whole.inverse() : whole).moves();
    }

    private int open() {
        if (++depth > DEEPEST) {
            throw cursor.error(cursor.at(), cursor.at() + 1, "brackets nest deeper than " + DEEPEST);
        }
        cursor.next();
        return cursor.at() - 1;
    }

    private void close(int start, String closer) {
        if (!cursor.isAny(closer)) {
            throw cursor.error(start, cursor.at(), "is not closed by " + closer);
        }
        cursor.next();
        depth--;
    }

    private int readRepeat() {
        int start = cursor.at();
        String digits = cursor.digits();
        if (digits.isEmpty()) {
            return 1;
        }
        if (digits.length() > 3 || Integer.parseInt(digits) == 0) {
            throw cursor.error(start, cursor.at(), "a group is repeated 1 to 999 times");
        }
        return Integer.parseInt(digits);
    }
}
