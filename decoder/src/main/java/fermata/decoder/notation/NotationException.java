package fermata.decoder.notation;

/** Text that is not a sequence: names the column (from 1), the token found there and what was expected. */
public final class NotationException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    private final int column;
    private final String token;

    NotationException(int column, String token, String problem) {
        super("column " + column + ", \"" + token + "\": " + problem);
        this.column = column;
        this.token = token;
    }

    /** The column of the token's first character, from 1. */
    public int column() {
        return column;
    }

    /** The token as it was written. */
    public String token() {
        return token;
    }
}
