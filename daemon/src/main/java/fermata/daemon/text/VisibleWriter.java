package fermata.daemon.text;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;

/**
 * The last thing before a terminal: whatever is printed through it is {@link Visible}. Holds
 * half a character at most. Not thread-safe beyond its lock.
 */
public final class VisibleWriter extends Writer {
    private final PrintWriter terminal;
    private String held = "";

    private VisibleWriter(PrintWriter terminal) {
        this.terminal = terminal;
    }

    /** A printer that makes visible what goes to another one. */
    public static PrintWriter before(PrintWriter terminal) {
        return new PrintWriter(new VisibleWriter(terminal), true);
    }

    @Override
    public void write(char[] buffer, int from, int length) {
        String text = held + new String(buffer, from, length);
        boolean isHalf = !text.isEmpty() && Character.isHighSurrogate(text.charAt(text.length() - 1));
        held = isHalf ? text.substring(text.length() - 1) : "";
        terminal.write(Visible.lines(isHalf ? text.substring(0, text.length() - 1) : text));
    }

    /** Passes on that the terminal is gone: whoever prints asks the outer writer. */
    @Override
    public void flush() throws IOException {
        terminal.flush();
        if (terminal.checkError()) {
            throw new IOException("cannot be printed");
        }
    }

    @Override
    public void close() throws IOException {
        terminal.write(Visible.lines(held));
        held = "";
        flush();
        terminal.close();
    }
}
