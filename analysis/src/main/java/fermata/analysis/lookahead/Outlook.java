package fermata.analysis.lookahead;

import java.util.Objects;

/** What could be known of a pair or block before it was needed. */
public sealed interface Outlook {
    /**
     * It could be found early enough from the stickers in view.
     *
     * @param leadMicros so long before it was needed
     * @param byElimination whether one of its pieces was told by where it could not be
     */
    record Identifiable(long leadMicros, boolean byElimination) implements Outlook {}

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
    }
}
