package fermata.daemon.json;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;

/** Practice days as documents and addresses write them, and the one whose date nobody knows. Stateless. */
public final class WrittenDay {
    /**
     * Stands for the day of practice whose date nobody knows yet. After all others, since it is most likely the newest;
     * the day after it still has a year of four digits.
     */
    public static final LocalDate UNKNOWN = LocalDate.of(9999, 12, 30);

    /** How that day is written. */
    public static final String UNKNOWN_WORD = "unknown";

    private WrittenDay() {}

    /** The word for a day. */
    public static String of(LocalDate day) {
        return day.equals(UNKNOWN) ? UNKNOWN_WORD : day.toString();
    }

    /**
     * The day that a word means.
     *
     * @throws DateTimeParseException if it means none
     */
    public static LocalDate parse(String word) {
        return word.equals(UNKNOWN_WORD) ? UNKNOWN : LocalDate.parse(word);
    }
}
