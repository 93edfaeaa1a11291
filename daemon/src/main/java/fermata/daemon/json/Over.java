package fermata.daemon.json;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** How many practice days are summed up, the last one given. */
public enum Over {
    /** That day alone. */
    NIGHT,
    /** The seven days up to it. */
    WEEK,
    /** All there are up to it. */
    ALL;

    private static final int WEEK_DAYS = 7;

    /** The word in addresses, documents and options. */
    public String written() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** What a word means; empty if it is none of them. */
    public static Optional<Over> of(String word) {
        return Arrays.stream(values())
                .filter(over -> over.written().equals(word))
                .findFirst();
    }

    /**
     * The first day that counts.
     *
     * @param last the last one
     * @param first the first day of all practice
     */
    public LocalDate from(LocalDate last, LocalDate first) {
        return switch (this) {
            case NIGHT -> last;
            case WEEK -> last.minusDays(WEEK_DAYS - 1);
            case ALL -> first;
        };
    }
}
