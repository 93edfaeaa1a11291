package fermata.analysis.record;

import java.util.function.Function;

/** A best, mean, average or spread: a time, or why there is none. */
public sealed interface Result {
    /** What the kind makes of it: exactly one of these is asked. */
    <T> T fold(
            Function<? super Time, ? extends T> time,
            Function<? super Dnf, ? extends T> dnf,
            Function<? super TooFew, ? extends T> tooFew);

    /**
     * A time.
     *
     * @param micros microseconds
     */
    record Time(long micros) implements Result {
        @Override
        public <T> T fold(
                Function<? super Time, ? extends T> time,
                Function<? super Dnf, ? extends T> dnf,
                Function<? super TooFew, ? extends T> tooFew) {
            return time.apply(this);
        }
    }

    /** Did not finish: too many of the attempts behind it were abandoned. */
    record Dnf() implements Result {
        @Override
        public <T> T fold(
                Function<? super Time, ? extends T> time,
                Function<? super Dnf, ? extends T> dnf,
                Function<? super TooFew, ? extends T> tooFew) {
            return dnf.apply(this);
        }
    }

    /**
     * Not enough attempts to say.
     *
     * @param count how many there are
     * @param needed how many it takes
     */
    record TooFew(int count, int needed) implements Result {
        @Override
        public <T> T fold(
                Function<? super Time, ? extends T> time,
                Function<? super Dnf, ? extends T> dnf,
                Function<? super TooFew, ? extends T> tooFew) {
            return tooFew.apply(this);
        }
    }
}
