package fermata.decoder.finding;

import java.util.Objects;

/**
 * Something that keeps a profile from being sound.
 *
 * @param field what is doubtful: a member of a profile's frame such as {@code code}, or what the drill lacks
 * @param why what was seen
 * @param toSettle what to turn, or to do, to settle it
 */
public record Doubt(String field, String why, String toSettle) {
    public Doubt {
        Objects.requireNonNull(field, "field");
        Objects.requireNonNull(why, "why");
        Objects.requireNonNull(toSettle, "toSettle");
    }

    /** One line for people. */
    public String message() {
        return field + ": " + why + ". " + toSettle;
    }
}
