package fermata.decoder.stream;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Quaternion;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.UUID;

/**
 * What the stream says, in the order in which it happened on the cube as far as that can be known. All times are in
 * microseconds; {@code arrivalMicros} is the board's monotonic clock when the frame arrived that told of the event,
 * {@code epoch} the clock epoch, counted from 0 over a capture.
 */
public sealed interface StreamEvent {
    /** What each kind is to one who must deal with all of them. */
    interface Visitor {
        void turnSensed(TurnSensed turn);

        void turnsLost(TurnsLost gap);

        void stateReported(StateReported report);

        void orientationSensed(OrientationSensed sample);

        void batteryReported(BatteryReported report);

        void epochStarted(EpochStarted epoch);

        void frameRejected(FrameRejected frame);

        void frameRepeated(FrameRepeated frame);
    }

    /** Goes to what the visitor does with the kind. */
    void visit(Visitor visitor);

    /** Board's monotonic clock when the frame arrived that told of this, in microseconds. */
    long arrivalMicros();

    /** The clock epoch it belongs to, from 0. */
    int epoch();

    /**
     * A turn.
     *
     * @param turn core frame
     * @param source heard or repaired
     * @param deviceMicros device clock, unwrapped within its epoch; empty if the device sends none
     * @param earlierByMicros 0 if the device time, or without one the arrival, is that of the turn as good as any; else
     *     the turn may have been made up to that much before it ({@link Long#MAX_VALUE}: no bound known)
     */
    record TurnSensed(
            Turn turn,
            TurnSource source,
            OptionalLong deviceMicros,
            long earlierByMicros,
            long arrivalMicros,
            int epoch)
            implements StreamEvent {
        public TurnSensed {
            Objects.requireNonNull(turn, "turn");
            Objects.requireNonNull(source, "source");
            Objects.requireNonNull(deviceMicros, "deviceMicros");
            if (earlierByMicros < 0) {
                throw new IllegalArgumentException("earlierByMicros " + earlierByMicros + " is negative");
            }
        }

        @Override
        public void visit(Visitor visitor) {
            visitor.turnSensed(this);
        }
    }

    /**
     * A gap: turns were made here that nobody will ever know.
     *
     * @param count how many (modulo the wrap of the sequence number); empty if the stream cannot tell, which includes
     *     that it may be none
     */
    record TurnsLost(OptionalInt count, long arrivalMicros, int epoch) implements StreamEvent {
        public TurnsLost {
            Objects.requireNonNull(count, "count");
            if (count.isPresent() && count.getAsInt() < 1) {
                throw new IllegalArgumentException("count " + count.getAsInt() + " of lost turns is not positive");
            }
        }

        @Override
        public void visit(Visitor visitor) {
            visitor.turnsLost(this);
        }
    }

    /**
     * The device's own idea of the cube.
     *
     * @param state every cubie once; ask it whether turning can reach it
     * @param turnsAhead how many turns it contains that have not been reported yet (negative: how many reported turns
     *     it does not contain); empty if the stream cannot tell
     */
    record StateReported(CubeState state, OptionalInt turnsAhead, long arrivalMicros, int epoch)
            implements StreamEvent {
        public StateReported {
            Objects.requireNonNull(state, "state");
            Objects.requireNonNull(turnsAhead, "turnsAhead");
        }

        @Override
        public void visit(Visitor visitor) {
            visitor.stateReported(this);
        }
    }

    /**
     * Which way the core lay. Samples stand where they arrived, which may be after turns that were made later: their
     * time says when they were taken.
     *
     * @param attitude takes the core's axes (x out of R, y out of U, z out of F) to a world whose y axis points up and
     *     whose other two point anywhere; they may turn slowly
     * @param deviceMicros device clock, unwrapped within its epoch; empty if the device sends none that is of use here
     */
    record OrientationSensed(Quaternion attitude, OptionalLong deviceMicros, long arrivalMicros, int epoch)
            implements StreamEvent {
        public OrientationSensed {
            Objects.requireNonNull(attitude, "attitude");
            Objects.requireNonNull(deviceMicros, "deviceMicros");
        }

        @Override
        public void visit(Visitor visitor) {
            visitor.orientationSensed(this);
        }
    }

    /** Charge left, 0..100 percent. */
    record BatteryReported(int percent, long arrivalMicros, int epoch) implements StreamEvent {
        @Override
        public void visit(Visitor visitor) {
            visitor.batteryReported(this);
        }
    }

    /** From here on device times lie on a new line. */
    record EpochStarted(EpochReason reason, long arrivalMicros, int epoch) implements StreamEvent {
        public EpochStarted {
            Objects.requireNonNull(reason, "reason");
        }

        @Override
        public void visit(Visitor visitor) {
            visitor.epochStarted(this);
        }
    }

    /** A frame that could not be read; its bytes are kept where frames are kept. */
    record FrameRejected(UUID characteristic, FrameFault fault, long arrivalMicros, int epoch) implements StreamEvent {
        public FrameRejected {
            Objects.requireNonNull(characteristic, "characteristic");
            Objects.requireNonNull(fault, "fault");
        }

        @Override
        public void visit(Visitor visitor) {
            visitor.frameRejected(this);
        }
    }

    /** A frame that said nothing new: a copy, or one overtaken by later frames. */
    record FrameRepeated(UUID characteristic, long arrivalMicros, int epoch) implements StreamEvent {
        public FrameRepeated {
            Objects.requireNonNull(characteristic, "characteristic");
        }

        @Override
        public void visit(Visitor visitor) {
            visitor.frameRepeated(this);
        }
    }
}
