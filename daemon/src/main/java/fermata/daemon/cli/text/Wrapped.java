package fermata.daemon.cli.text;

import java.util.ArrayList;
import java.util.List;

/** Breaks text at its blanks to 80 columns. Stateless. */
final class Wrapped {
    private static final int COLUMNS = 80;

    private Wrapped() {}

    /** A sentence after a head; what does not fit hangs below where it began. */
    static List<String> hanging(String head, String sentence) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder(head);
        for (String word : sentence.split(" ")) {
            if (line.length() + word.length() > COLUMNS) {
                lines.add(line.toString());
                line = new StringBuilder(" ".repeat(head.length()));
            }
            line.append(word).append(' ');
        }
        lines.add(line.toString().stripTrailing());
        return lines;
    }
}
