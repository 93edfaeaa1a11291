package fermata.decoder.notation;

/** A place in a text that moves only forwards. */
final class Cursor {
    private static final String APOSTROPHES = "'\u2019\u2018\u2032\u02b9\u00b4`";
    private static final int LONGEST_QUOTED = 24;

    private final String text;
    private int at;

    Cursor(String text) {
        this.text = text;
    }

    int at() {
        return at;
    }

    boolean atEnd() {
        return at >= text.length();
    }

    boolean isAny(String letters) {
        return !atEnd() && letters.indexOf(text.charAt(at)) >= 0;
    }

    char next() {
        return text.charAt(at++);
    }

    boolean skipPrime() {
        boolean prime = isAny(APOSTROPHES);
        if (prime) {
            at++;
        }
        return prime;
    }

    String digits() {
        int start = at;
        while (isAny("0123456789")) {
            at++;
        }
        return text.substring(start, at);
    }

    /** Skips white space and comments. */
    void skipBlank() {
        while (!atEnd()) {
            if (text.startsWith("//", at)) {
                int end = text.indexOf('\n', at);
                at = end < 0 ? text.length() : end;
            } else if (Character.isWhitespace(text.charAt(at)) || text.charAt(at) == '\u00a0') {
                at++;
            } else {
                return;
            }
        }
    }

    /** An error about the whole word that begins at {@code start}. */
    NotationException wordError(int start, String problem) {
        int end = start;
        while (end < text.length()
                && !Character.isWhitespace(text.charAt(end))
                && "()[],:".indexOf(text.charAt(end)) < 0) {
            end++;
        }
        return error(start, Math.max(end, start + 1), problem);
    }

    NotationException error(int start, int end, String problem) {
        String token = text.substring(start, Math.min(end, text.length()));
        return new NotationException(
                start + 1,
                token.length() > LONGEST_QUOTED ? token.substring(0, LONGEST_QUOTED) + "..." : token,
                problem);
    }
}
