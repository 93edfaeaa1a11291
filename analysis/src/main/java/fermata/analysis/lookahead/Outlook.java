package fermata.analysis.lookahead;

import java.util.List;
import java.util.Objects;
import java.util.function.Function;

/** What could be known of a pair or block before it was needed. */
public sealed interface Outlook {
    /** The pieces that were not told in time from the stickers in view; none where it could be found. */
    Wanted hidden();

    /** What the kind makes of it: exactly one of these is asked. */
    <T> T fold(
            Function<? super Identifiable, ? extends T> identifiable,
            Function<? super WithTilt, ? extends T> withTilt,
            Function<? super Hidden, ? extends T> unknown);

    /**
     * It could be found early enough from the stickers in view.
     *
     * @param leadMicros so long before it was needed
     * @param byElimination whether one of its pieces was told by where it could not be
     */
    record Identifiable(long leadMicros, boolean byElimination) implements Outlook {
        @Override
        public <T> T fold(
                Function<? super Identifiable, ? extends T> identifiable,
                Function<? super WithTilt, ? extends T> withTilt,
                Function<? super Hidden, ? extends T> unknown) {
            return identifiable.apply(this);
        }

        @Override
        public Wanted hidden() {
            return new Wanted(List.of(), List.of());
        }
    }

    /**
     * It could not, but a small tilt would have shown enough.
     *
     * @param tilt which
     * @param leadMicros so long before it was needed
     * @param hidden the pieces that were not told without it
     */
    record WithTilt(View tilt, long leadMicros, Wanted hidden) implements Outlook {
        public WithTilt {
            Objects.requireNonNull(tilt, "tilt");
            Objects.requireNonNull(hidden, "hidden");
        }

        @Override
        public <T> T fold(
                Function<? super Identifiable, ? extends T> identifiable,
                Function<? super WithTilt, ? extends T> withTilt,
                Function<? super Hidden, ? extends T> unknown) {
            return withTilt.apply(this);
        }
    }

    /**
     * Nothing could be known earlier.
     *
     * @param hidden the pieces that were not told in time
     */
    record Hidden(Wanted hidden) implements Outlook {
        public Hidden {
            Objects.requireNonNull(hidden, "hidden");
        }

        @Override
        public <T> T fold(
                Function<? super Identifiable, ? extends T> identifiable,
                Function<? super WithTilt, ? extends T> withTilt,
                Function<? super Hidden, ? extends T> unknown) {
            return unknown.apply(this);
        }
    }
}
