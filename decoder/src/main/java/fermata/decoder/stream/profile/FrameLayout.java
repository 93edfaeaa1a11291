package fermata.decoder.stream.profile;

import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Quaternion;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;

/** How one kind of frame is laid out. */
public sealed interface FrameLayout {
    /** What the kind of the frame makes of it: exactly one of these is asked. */
    <T> T fold(
            Function<? super Turns, ? extends T> turns,
            Function<? super State, ? extends T> state,
            Function<? super Attitude, ? extends T> attitude,
            Function<? super Battery, ? extends T> battery,
            Function<? super Other, ? extends T> other);

    /** What all frames have. */
    Envelope envelope();

    /**
     * What all frames have.
     *
     * @param name its name in the profile
     * @param minBytes shortest frame that holds every field
     * @param maxBytes longest frame accepted
     * @param constants what must stand in the frame
     * @param checksums what must agree
     */
    record Envelope(String name, int minBytes, int maxBytes, List<Constant> constants, List<Checksum> checksums) {
        public Envelope {
            Objects.requireNonNull(name, "name");
            constants = List.copyOf(constants);
            checksums = List.copyOf(checksums);
            if (minBytes < 1 || maxBytes < minBytes) {
                throw new IllegalArgumentException(
                        "frame " + name + " of " + minBytes + ".." + maxBytes + " bytes is not a range from 1");
            }
        }
    }

    /** A field that always has the same value. */
    record Constant(BitField field, long value) {
        public Constant {
            Objects.requireNonNull(field, "field");
        }
    }

    /**
     * A device clock.
     *
     * @param field ticks, unsigned; its width says when they wrap
     * @param tickMicros microseconds a tick
     */
    record Clock(BitField field, double tickMicros) {
        public Clock {
            Objects.requireNonNull(field, "field");
            if (!(tickMicros > 0 && tickMicros <= 1e6)) {
                throw new IllegalArgumentException("tickMicros " + tickMicros + " is not in (0, 1e6]");
            }
        }
    }

    /**
     * Turns before the newest.
     *
     * @param strideBits from one entry to the next
     * @param entries how many there is room for
     * @param newestFirst whether entry 0 is the turn just before the newest, else the oldest is
     * @param count how many entries, newest first, are filled; without it all that fit into the frame and are not
     *     {@code emptyCode}
     * @param emptyCode code of an entry that holds nothing
     * @param code turn code of entry 0
     * @param time when the turn of entry 0 was made
     */
    record History(
            int strideBits,
            int entries,
            boolean newestFirst,
            Optional<BitField> count,
            Optional<Long> emptyCode,
            TurnCode code,
            HistoryTime time) {
        public History {
            Objects.requireNonNull(count, "count");
            Objects.requireNonNull(emptyCode, "emptyCode");
            Objects.requireNonNull(code, "code");
            Objects.requireNonNull(time, "time");
        }
    }

    /** How entries of a history tell their time. */
    sealed interface HistoryTime {
        /** What the kind makes of it: exactly one of these is asked. */
        <T> T fold(
                Function<? super None, ? extends T> none,
                Function<? super Absolute, ? extends T> absolute,
                Function<? super BeforeNewer, ? extends T> beforeNewer);

        /** The first bit after the field in entry 0; 0 where there is none. */
        int endBits();

        /** They do not. */
        record None() implements HistoryTime {
            @Override
            public <T> T fold(
                    Function<? super None, ? extends T> none,
                    Function<? super Absolute, ? extends T> absolute,
                    Function<? super BeforeNewer, ? extends T> beforeNewer) {
                return none.apply(this);
            }

            @Override
            public int endBits() {
                return 0;
            }
        }

        /** Ticks of the device clock, of the same width as the clock or less (then its low bits). */
        record Absolute(BitField field) implements HistoryTime {
            public Absolute {
                Objects.requireNonNull(field, "field");
            }

            @Override
            public <T> T fold(
                    Function<? super None, ? extends T> none,
                    Function<? super Absolute, ? extends T> absolute,
                    Function<? super BeforeNewer, ? extends T> beforeNewer) {
                return absolute.apply(this);
            }

            @Override
            public int endBits() {
                return field.endBits();
            }
        }

        /**
         * Ticks between the entry and the next newer turn.
         *
         * @param saturates whether all ones mean "that many or more"
         */
        record BeforeNewer(BitField field, boolean saturates) implements HistoryTime {
            public BeforeNewer {
                Objects.requireNonNull(field, "field");
            }

            @Override
            public <T> T fold(
                    Function<? super None, ? extends T> none,
                    Function<? super Absolute, ? extends T> absolute,
                    Function<? super BeforeNewer, ? extends T> beforeNewer) {
                return beforeNewer.apply(this);
            }

            @Override
            public int endBits() {
                return field.endBits();
            }
        }
    }

    /**
     * Turns.
     *
     * @param sequence number of the newest turn, unsigned, rises by one a turn, wraps at its width
     * @param clock when the newest turn was made
     * @param fresh how many turns, counted from the newest, the frame is the first to announce; without it one
     * @param code turn code of the newest turn
     * @param history turns before it
     * @param turns what the codes mean
     */
    record Turns(
            Envelope envelope,
            Optional<BitField> sequence,
            Optional<Clock> clock,
            Optional<BitField> fresh,
            TurnCode code,
            Optional<History> history,
            Map<Long, Turn> turns)
            implements FrameLayout {
        public Turns {
            Objects.requireNonNull(envelope, "envelope");
            Objects.requireNonNull(sequence, "sequence");
            Objects.requireNonNull(clock, "clock");
            Objects.requireNonNull(fresh, "fresh");
            Objects.requireNonNull(code, "code");
            Objects.requireNonNull(history, "history");
            turns = Map.copyOf(turns);
        }

        @Override
        public <T> T fold(
                Function<? super Turns, ? extends T> turns,
                Function<? super State, ? extends T> state,
                Function<? super Attitude, ? extends T> attitude,
                Function<? super Battery, ? extends T> battery,
                Function<? super Other, ? extends T> other) {
            return turns.apply(this);
        }
    }

    /**
     * The whole cube.
     *
     * @param sequence number of the last turn it contains
     * @param clock when the value was formed
     */
    record State(Envelope envelope, Optional<BitField> sequence, Optional<Clock> clock, StateEncoding encoding)
            implements FrameLayout {
        public State {
            Objects.requireNonNull(envelope, "envelope");
            Objects.requireNonNull(sequence, "sequence");
            Objects.requireNonNull(clock, "clock");
            Objects.requireNonNull(encoding, "encoding");
        }

        @Override
        public <T> T fold(
                Function<? super Turns, ? extends T> turns,
                Function<? super State, ? extends T> state,
                Function<? super Attitude, ? extends T> attitude,
                Function<? super Battery, ? extends T> battery,
                Function<? super Other, ? extends T> other) {
            return state.apply(this);
        }
    }

    /**
     * Which way the core lies.
     *
     * @param clock when the sample was taken
     * @param components w, x, y, z as sent
     * @param one what stands for 1; 0 if the components are IEEE 754 floats of 32 bits
     * @param inverted whether the quaternion takes the world's axes to the sensor's, and not the sensor's to the
     *     world's
     * @param sensor takes the sensor's axes to the core's (x out of R, y out of U, z out of F)
     * @param world takes the sensor's idea of the world to one whose y axis points up
     */
    record Attitude(
            Envelope envelope,
            Optional<Clock> clock,
            List<BitField> components,
            long one,
            boolean inverted,
            Quaternion sensor,
            Quaternion world)
            implements FrameLayout {
        public Attitude {
            Objects.requireNonNull(envelope, "envelope");
            Objects.requireNonNull(clock, "clock");
            Objects.requireNonNull(sensor, "sensor");
            Objects.requireNonNull(world, "world");
            components = List.copyOf(components);
            if (components.size() != 4 || one < 0) {
                throw new IllegalArgumentException(
                        components.size() + " components with one as " + one + " make no quaternion");
            }
        }

        /** Whether the components are floats. */
        public boolean floats() {
            return one == 0;
        }

        @Override
        public <T> T fold(
                Function<? super Turns, ? extends T> turns,
                Function<? super State, ? extends T> state,
                Function<? super Attitude, ? extends T> attitude,
                Function<? super Battery, ? extends T> battery,
                Function<? super Other, ? extends T> other) {
            return attitude.apply(this);
        }
    }

    /** Something that is known to come and of no use here. */
    record Other(Envelope envelope) implements FrameLayout {
        public Other {
            Objects.requireNonNull(envelope, "envelope");
        }

        @Override
        public <T> T fold(
                Function<? super Turns, ? extends T> turns,
                Function<? super State, ? extends T> state,
                Function<? super Attitude, ? extends T> attitude,
                Function<? super Battery, ? extends T> battery,
                Function<? super Other, ? extends T> other) {
            return other.apply(this);
        }
    }

    /** Charge left, in percent. */
    record Battery(Envelope envelope, BitField percent) implements FrameLayout {
        public Battery {
            Objects.requireNonNull(envelope, "envelope");
            Objects.requireNonNull(percent, "percent");
        }

        @Override
        public <T> T fold(
                Function<? super Turns, ? extends T> turns,
                Function<? super State, ? extends T> state,
                Function<? super Attitude, ? extends T> attitude,
                Function<? super Battery, ? extends T> battery,
                Function<? super Other, ? extends T> other) {
            return battery.apply(this);
        }
    }
}
