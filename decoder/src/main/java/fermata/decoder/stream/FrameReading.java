package fermata.decoder.stream;

import fermata.decoder.cube.CubeState;
import fermata.decoder.orientation.Quaternion;
import java.util.List;
import java.util.Objects;
import java.util.OptionalLong;

/** What one value of one characteristic says. Bad bytes are an outcome, not an exception. */
public sealed interface FrameReading {
    /** What each kind is to one who must deal with all of them. */
    interface Visitor {
        void turns(TurnsFrame frame);

        void state(StateFrame frame);

        void orientation(OrientationFrame frame);

        void battery(BatteryFrame frame);

        void ignored(Ignored frame);

        void broken(Broken frame);
    }

    /** Goes to what the visitor does with the kind. */
    void visit(Visitor visitor);

    /**
     * Turns.
     *
     * @param sequence number of the newest turn as sent, where the profile has one
     * @param ticks device ticks of the newest turn as sent, where the profile has a clock
     * @param fresh how many of the turns, counted from the newest, this frame is the first to announce; the others
     *     repeat earlier frames
     * @param turns newest last
     */
    record TurnsFrame(OptionalLong sequence, OptionalLong ticks, int fresh, List<FrameTurn> turns)
            implements FrameReading {
        public TurnsFrame {
            Objects.requireNonNull(sequence, "sequence");
            Objects.requireNonNull(ticks, "ticks");
            turns = List.copyOf(turns);
            if (fresh < 0 || fresh > turns.size()) {
                throw new IllegalArgumentException("fresh " + fresh + " is not in 0.." + turns.size());
            }
        }

        @Override
        public void visit(Visitor visitor) {
            visitor.turns(this);
        }
    }

    /**
     * The device's own idea of the cube.
     *
     * @param sequence number of the last turn it contains
     * @param ticks device ticks when the value was formed
     * @param state every cubie once; ask it whether turning can reach it
     */
    record StateFrame(OptionalLong sequence, OptionalLong ticks, CubeState state) implements FrameReading {
        public StateFrame {
            Objects.requireNonNull(sequence, "sequence");
            Objects.requireNonNull(ticks, "ticks");
            Objects.requireNonNull(state, "state");
        }

        @Override
        public void visit(Visitor visitor) {
            visitor.state(this);
        }
    }

    /**
     * Which way the core lies.
     *
     * @param ticks device ticks when the sample was taken
     * @param attitude takes the core's axes (x out of R, y out of U, z out of F) to a world whose y axis points up
     */
    record OrientationFrame(OptionalLong ticks, Quaternion attitude) implements FrameReading {
        public OrientationFrame {
            Objects.requireNonNull(ticks, "ticks");
            Objects.requireNonNull(attitude, "attitude");
        }

        @Override
        public void visit(Visitor visitor) {
            visitor.orientation(this);
        }
    }

    /** Charge left, 0..100 percent. */
    record BatteryFrame(int percent) implements FrameReading {
        public BatteryFrame {
            if (percent < 0 || percent > 100) {
                throw new IllegalArgumentException("percent " + percent + " is not in 0..100");
            }
        }

        @Override
        public void visit(Visitor visitor) {
            visitor.battery(this);
        }
    }

    /** A value the profile says nothing about, or says to leave alone. */
    record Ignored(String reason) implements FrameReading {
        public Ignored {
            Objects.requireNonNull(reason, "reason");
        }

        @Override
        public void visit(Visitor visitor) {
            visitor.ignored(this);
        }
    }

    /** A value that should have been readable and is not. */
    record Broken(FrameFault fault) implements FrameReading {
        public Broken {
            Objects.requireNonNull(fault, "fault");
        }

        @Override
        public void visit(Visitor visitor) {
            visitor.broken(this);
        }
    }
}
