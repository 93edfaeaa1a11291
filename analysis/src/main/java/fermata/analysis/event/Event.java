package fermata.analysis.event;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Quaternion;
import fermata.decoder.stream.TurnSource;
import java.util.List;
import java.util.Objects;

/**
 * One entry of the log, version {@value #VERSION}. Events are ordered by their place in a {@link CaptureLog}, not by
 * time. Immutable.
 */
public sealed interface Event {
    /** The version of this set of events. */
    int VERSION = 1;

    /** Stands where a time would stand when the capture has no clock. */
    long NO_TIME = Long.MIN_VALUE;

    /** What each kind is to one who must have an answer to all of them. */
    interface Visitor<T> {
        T turned(Turned turned);

        T gap(Gap gap);

        T snapshot(Snapshot snapshot);

        T reference(Reference reference);

        T mark(Mark mark);

        T verdict(Verdict verdict);

        T handStated(HandStated stated);

        T calibrated(Calibrated calibrated);

        T sequencesStated(SequencesStated stated);

        T oriented(Oriented oriented);
    }

    /**
     * One who follows the cube: what is said of an attempt, a solver or the way the core lies leaves the cube as it
     * was. A new kind must say here on which side it is.
     */
    interface CubeVisitor<T> extends Visitor<T> {
        /** The answer to whatever leaves the cube as it was. */
        T unchanged();

        @Override
        default T verdict(Verdict verdict) {
            return unchanged();
        }

        @Override
        default T handStated(HandStated stated) {
            return unchanged();
        }

        @Override
        default T calibrated(Calibrated calibrated) {
            return unchanged();
        }

        @Override
        default T sequencesStated(SequencesStated stated) {
            return unchanged();
        }

        @Override
        default T oriented(Oriented oriented) {
            return unchanged();
        }
    }

    /** Asks the visitor by the kind. */
    <T> T visit(Visitor<T> visitor);

    /** The cube, solver and hand it belongs to. */
    Origin origin();

    /** Microseconds since the capture began, or {@link #NO_TIME}. */
    long atMicros();

    /** Whether the event has a time. */
    default boolean isTimed() {
        return atMicros() != NO_TIME;
    }

    /**
     * A turn of a face against the core.
     *
     * @param turn in the core frame, as it was heard: a half turn that came as one stays one
     * @param source heard, or repaired from a later frame
     */
    record Turned(Turn turn, TurnSource source, Origin origin, long atMicros) implements Event {
        public Turned {
            Objects.requireNonNull(turn, "turn");
            Objects.requireNonNull(source, "source");
            requireOrigin(origin);
        }

        @Override
        public <T> T visit(Visitor<T> visitor) {
            return visitor.turned(this);
        }
    }

    /**
     * Turns happened that were not heard.
     *
     * @param turnsLost how many, from 1, or {@link #UNKNOWN_COUNT}, which includes that it may have been none
     */
    record Gap(int turnsLost, Origin origin, long atMicros) implements Event {
        /** Stands where the count would stand when the stream cannot tell it. */
        public static final int UNKNOWN_COUNT = -1;

        public Gap {
            if (turnsLost < 1 && turnsLost != UNKNOWN_COUNT) {
                throw new IllegalArgumentException(
                        "turnsLost " + turnsLost + " of a gap is neither positive nor UNKNOWN_COUNT (-1)");
            }
            requireOrigin(origin);
        }

        @Override
        public <T> T visit(Visitor<T> visitor) {
            return visitor.gap(this);
        }
    }

    /**
     * The cube's own idea of its state, exactly here between the turns before and after it.
     *
     * @param state against the centres; legal or not
     */
    record Snapshot(CubeState state, Origin origin, long atMicros) implements Event {
        public Snapshot {
            Objects.requireNonNull(state, "state");
            requireOrigin(origin);
        }

        @Override
        public <T> T visit(Visitor<T> visitor) {
            return visitor.snapshot(this);
        }
    }

    /**
     * From here on another tracked state means 'solved': a corner was twisted back, a device lost count, stickers
     * moved.
     *
     * @param state the tracked state in which the cube in the hand looks solved
     */
    record Reference(CubeState state, Origin origin, long atMicros) implements Event {
        public Reference {
            Objects.requireNonNull(state, "state");
            requireOrigin(origin);
        }

        @Override
        public <T> T visit(Visitor<T> visitor) {
            return visitor.reference(this);
        }
    }

    /**
     * Something was announced or remarked.
     *
     * @param kind what
     * @param text the scramble's words for {@link MarkKind#SCRAMBLE}, the remark for {@link MarkKind#NOTE}, else empty
     */
    record Mark(MarkKind kind, String text, Origin origin, long atMicros) implements Event {
        public Mark {
            Objects.requireNonNull(kind, "kind");
            Objects.requireNonNull(text, "text");
            if (kind == MarkKind.SCRAMBLE && text.isBlank()) {
                throw new IllegalArgumentException("a scramble is announced without its words");
            }
            requireOrigin(origin);
        }

        @Override
        public <T> T visit(Visitor<T> visitor) {
            return visitor.mark(this);
        }
    }

    /**
     * Somebody's word about an attempt. It may stand anywhere in the log, also long after the attempt.
     *
     * @param attemptId the attempt it is about
     * @param ruling the word
     */
    record Verdict(String attemptId, Ruling ruling, Origin origin, long atMicros) implements Event {
        public Verdict {
            if (Objects.requireNonNull(attemptId, "attemptId").isBlank()) {
                throw new IllegalArgumentException("a verdict names no attempt");
            }
            Objects.requireNonNull(ruling, "ruling");
            requireOrigin(origin);
        }

        @Override
        public <T> T visit(Visitor<T> visitor) {
            return visitor.verdict(this);
        }
    }

    /**
     * The solver's word on what the hand did in an attempt. Like a verdict it may stand anywhere; the last one holds.
     *
     * @param attemptId the attempt it is about
     * @param words the moves in the hand's notation, begun in the hold of the centres; empty takes the last word back
     */
    record HandStated(String attemptId, String words, Origin origin, long atMicros) implements Event {
        public HandStated {
            if (Objects.requireNonNull(attemptId, "attemptId").isBlank()) {
                throw new IllegalArgumentException("words of the hand name no attempt");
            }
            Objects.requireNonNull(words, "words");
            requireOrigin(origin);
        }

        @Override
        public <T> T visit(Visitor<T> visitor) {
            return visitor.handStated(this);
        }
    }

    /**
     * A solver's times from a calibration drill in this capture, which the solver wants to be used. The last one of a
     * solver's hand holds.
     *
     * @param hand whose drill it was, left or right
     * @param times what was measured
     */
    record Calibrated(Hand hand, OwnTimes times, Origin origin, long atMicros) implements Event {
        public Calibrated {
            if (hand != Hand.LEFT && hand != Hand.RIGHT) {
                throw new IllegalArgumentException("a drill is for one hand, left or right, not for " + hand);
            }
            Objects.requireNonNull(times, "times");
            requireOrigin(origin);
        }

        @Override
        public <T> T visit(Visitor<T> visitor) {
            return visitor.calibrated(this);
        }
    }

    /**
     * The sequences that a solver says the hand turns in last layers. The last list of a solver's newest capture holds.
     *
     * @param sequences each in the hand's notation; none takes the last list back
     */
    record SequencesStated(List<String> sequences, Origin origin, long atMicros) implements Event {
        public SequencesStated {
            sequences = List.copyOf(sequences);
            requireOrigin(origin);
        }

        @Override
        public <T> T visit(Visitor<T> visitor) {
            return visitor.sequencesStated(this);
        }
    }

    /**
     * How the core lay at a moment, as a motion sensor in it told.
     *
     * @param attitude takes the core's axes (x out of R, y out of U, z out of F) to a world whose y axis points up and
     *     whose other two point anywhere and may turn slowly
     */
    record Oriented(Quaternion attitude, Origin origin, long atMicros) implements Event {
        public Oriented {
            Objects.requireNonNull(attitude, "attitude");
            requireOrigin(origin);
            if (atMicros == NO_TIME) {
                throw new IllegalArgumentException("an orientation without a time says nothing about any turn");
            }
        }

        @Override
        public <T> T visit(Visitor<T> visitor) {
            return visitor.oriented(this);
        }
    }

    private static void requireOrigin(Origin origin) {
        Objects.requireNonNull(origin, "origin");
    }
}
