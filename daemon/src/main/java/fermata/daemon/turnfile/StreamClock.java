package fermata.daemon.turnfile;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** What the times of a stream rest on. */
public enum StreamClock {
    /** The cube's own clock. */
    DEVICE,
    /** When the radio handed the turn over. */
    ARRIVAL,
    /** There are no times. */
    NONE;

    /** The words in files. */
    public static final List<String> WORDS =
            Arrays.stream(values()).map(StreamClock::written).toList();

    /** The word in files and on screens. */
    public String written() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The clock of its word. */
    public static StreamClock of(String word) {
        return valueOf(word.toUpperCase(Locale.ROOT));
    }
}
