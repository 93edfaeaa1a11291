package fermata.daemon.json;

import fermata.daemon.text.Visible;

/** A line of a file that does not say what it should. The message names file, line, field, value and expectation. */
public final class BadLineException extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private static final int LONGEST_VALUE = 80;

    /**
     * @param file the file as the user named it
     * @param line from 1
     * @param field the member; empty if the line as a whole is wrong
     * @param value what stands there
     * @param expected what should
     */
    public BadLineException(String file, int line, String field, String value, String expected) {
        super(Visible.line(file + ", line " + line + ": " + (field.isEmpty() ? "" : field + " ") + "is " + cut(value)
                + ", expected " + expected));
    }

    private static String cut(String value) {
        return value.length() <= LONGEST_VALUE ? value : value.substring(0, LONGEST_VALUE - 3) + "...";
    }
}
