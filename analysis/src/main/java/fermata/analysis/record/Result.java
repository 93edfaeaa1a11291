package fermata.analysis.record;

/** A best, mean, average or spread: a time, or why there is none. */
public sealed interface Result {
    /**
     * A time.
     *
     * @param micros microseconds
     */
    record Time(long micros) implements Result {}

    /** Did not finish: too many of the attempts behind it were abandoned. */
    record Dnf() implements Result {}

    /**
     * Not enough attempts to say.
     *
     * @param count how many there are
     * @param needed how many it takes
     */
    record TooFew(int count, int needed) implements Result {}
}
