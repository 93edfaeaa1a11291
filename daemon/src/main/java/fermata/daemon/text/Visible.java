package fermata.daemon.text;

import java.util.Locale;

/**
 * Makes visible what a terminal would obey and what an eye would not see: control characters, directions of writing,
 * separators of lines, characters without width, halves of characters. Each becomes its number in angle brackets, as in
 * {@code <1B>}. Letters of all languages stay as they are. Stateless; linear in the text.
 */
public final class Visible {
    private Visible() {}

    /** A text for one line: line breaks become visible too. */
    public static String line(String text) {
        return shown(text, false);
    }

    /** A text of several lines: its line breaks and tabs stay. */
    public static String lines(String text) {
        return shown(text, true);
    }

    private static String shown(String text, boolean severalLines) {
        if (text.codePoints().noneMatch(Visible::isInvisible)) {
            return text;
        }
        StringBuilder shown = new StringBuilder(text.length() + 16);
        text.codePoints().forEach(point -> {
            if (isInvisible(point) && !(severalLines && (point == '\n' || point == '\t'))) {
                shown.append(String.format(Locale.ROOT, "<%02X>", point));
            } else {
                shown.appendCodePoint(point);
            }
        });
        return shown.toString();
    }

    /** Whether a character is obeyed or unseen rather than read; line breaks and tabs are among them. */
    public static boolean isInvisible(int codePoint) {
        if (codePoint >= ' ' && codePoint < 0x7F) {
            return false;
        }
        return switch (Character.getType(codePoint)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR,
                    Character.SURROGATE,
                    Character.PRIVATE_USE,
                    Character.UNASSIGNED -> true;
            default -> false;
        };
    }
}
