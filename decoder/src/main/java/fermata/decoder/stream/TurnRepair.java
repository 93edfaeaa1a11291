package fermata.decoder.stream;

import fermata.decoder.clock.TickUnwrapper;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.FrameReading.BatteryFrame;
import fermata.decoder.stream.FrameReading.Broken;
import fermata.decoder.stream.FrameReading.Ignored;
import fermata.decoder.stream.FrameReading.OrientationFrame;
import fermata.decoder.stream.FrameReading.StateFrame;
import fermata.decoder.stream.FrameReading.TurnsFrame;
import fermata.decoder.stream.StreamEvent.BatteryReported;
import fermata.decoder.stream.StreamEvent.FrameRejected;
import fermata.decoder.stream.StreamEvent.FrameRepeated;
import fermata.decoder.stream.StreamEvent.OrientationSensed;
import fermata.decoder.stream.StreamEvent.StateReported;
import fermata.decoder.stream.StreamEvent.TurnSensed;
import fermata.decoder.stream.StreamEvent.TurnsLost;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.UUID;

/**
 * Makes one gapless story of the frames of one device: copies dropped, overtaken frames put back in their place, missed
 * turns filled from later histories, the rest counted as lost. It never makes up a turn, and where it cannot tell
 * whether turns are missing it says so. Nothing that was given out is taken back: a frame that would make a gap waits
 * for what may still come instead.
 *
 * <p>A device is taken to have gone on (and not restarted) if its clock did, or, without a clock, if its number and the
 * turns it repeats agree with what was heard. O(turns in the frame). Not thread-safe.
 */
final class TurnRepair {
    /** Faster than any hand: more new numbers than this mean a restart, not turns. */
    private static final long MAX_TURNS_A_SECOND = 40;

    private static final long BURST_TURNS = 64;

    /** Of all numbers: what waits at a quarter is not taken for the past when it is let go at less than a half. */
    private static final int MOST_AHEAD_SHARE = 4;

    private final Epochs epochs;
    private final boolean hasClock;
    private final TickUnwrapper ticks;
    private final SequenceMemory memory;
    private final LateFrames late = new LateFrames();
    private final long numbers;

    private boolean connected;
    private int connection;
    private boolean sameDeviceSession;
    private long lastTurnMicros;
    private Optional<Turn> lastTurn = Optional.empty();
    private List<StreamEvent> events = new ArrayList<>();
    private long now;

    /**
     * For one capture.
     *
     * @param sequenceBits width of the sequence number, 0 if there is none
     * @param ticks the device's clock
     * @param hasClock whether there is one
     */
    TurnRepair(int sequenceBits, TickUnwrapper ticks, boolean hasClock, Epochs epochs) {
        this.numbers = 1L << sequenceBits;
        this.memory = new SequenceMemory(numbers);
        this.ticks = ticks;
        this.hasClock = hasClock;
        this.epochs = epochs;
    }

    /** Notes that turns were made before a frame, nobody knows which. */
    List<StreamEvent> lose(RawFrame frame) {
        begin(frame);
        events.add(new TurnsLost(OptionalInt.empty(), now, epochs.current()));
        sameDeviceSession = true;
        return List.copyOf(events);
    }

    /** Notes a frame that said nothing new. */
    List<StreamEvent> repeat(RawFrame frame) {
        begin(frame);
        sameDeviceSession = true;
        events.add(new FrameRepeated(frame.characteristic(), now, epochs.current()));
        return List.copyOf(events);
    }

    private void begin(RawFrame frame) {
        events = new ArrayList<>();
        boolean isFirst = !connected || connection != frame.connection();
        // What was overtaken on one connection cannot come on the next.
        release(isFirst ? Long.MAX_VALUE : frame.arrivalMicros());
        now = frame.arrivalMicros();
        if (isFirst) {
            sameDeviceSession = !connected;
            connected = true;
            connection = frame.connection();
            events.add(epochs.start(EpochReason.CONNECTED, now));
        }
    }

    /** What a frame adds to the story, in order. */
    List<StreamEvent> accept(RawFrame frame, FrameReading reading) {
        begin(frame);
        reading.visit(new Taking(frame.characteristic()));
        return List.copyOf(events);
    }

    /** What a reading of this characteristic's frame adds to the story. */
    private final class Taking implements FrameReading.Visitor {
        private final UUID characteristic;

        Taking(UUID characteristic) {
            this.characteristic = characteristic;
        }

        @Override
        public void turns(TurnsFrame frame) {
            if (!frame.turns().isEmpty()) {
                hear(new LateFrames.Entry(characteristic, now, frame), true);
                releaseWhatFollows();
            }
        }

        @Override
        public void state(StateFrame frame) {
            report(frame);
        }

        @Override
        public void orientation(OrientationFrame frame) {
            events.add(new OrientationSensed(frame.attitude(), deviceMicros(frame), now, epochs.current()));
        }

        @Override
        public void battery(BatteryFrame frame) {
            events.add(new BatteryReported(frame.percent(), now, epochs.current()));
        }

        @Override
        public void ignored(Ignored frame) {}

        @Override
        public void broken(Broken frame) {
            events.add(new FrameRejected(characteristic, frame.fault(), now, epochs.current()));
        }
    }

    /** What is to be said once nothing that arrived before {@code nowMicros} can still be on its way. */
    List<StreamEvent> settle(long nowMicros) {
        events = new ArrayList<>();
        release(nowMicros);
        return List.copyOf(events);
    }

    private void release(long nowMicros) {
        while (late.isDue(nowMicros)) {
            hearWaiting(late.next(this::signedAhead).orElseThrow());
            releaseWhatFollows();
        }
    }

    /** Takes the waiting frames whose turns join on to what is known by now. */
    private void releaseWhatFollows() {
        Optional<LateFrames.Entry> next = late.next(this::signedAhead);
        while (next.isPresent()
                && signedAhead(next.get()) <= next.get().turns().turns().size()) {
            hearWaiting(next.get());
            next = late.next(this::signedAhead);
        }
    }

    private void hearWaiting(LateFrames.Entry entry) {
        late.remove(entry);
        hear(entry, false);
    }

    private void hear(LateFrames.Entry entry, boolean mayWait) {
        now = entry.arrivalMicros();
        boolean isNumbered = entry.turns().sequence().isPresent();
        if (!(isNumbered ? numbered(entry, mayWait) : unnumbered(entry.turns()))) {
            events.add(new FrameRepeated(entry.characteristic(), now, epochs.current()));
        }
    }

    /** How far a frame is ahead of what is known, below 0 if behind. */
    private long signedAhead(LateFrames.Entry entry) {
        return signed(memory.ahead(entry.sequence()));
    }

    private long signed(long ahead) {
        return ahead > numbers / 2 ? ahead - numbers : ahead;
    }

    /** Of use if turns have set the clock of this epoch; a sample alone never starts or ends one. */
    private OptionalLong deviceMicros(OrientationFrame sample) {
        OptionalLong near = sample.ticks().isPresent()
                        && ticks.hasStarted()
                        && epochs.last().hasTurns()
                ? ticks.near(sample.ticks().getAsLong(), now)
                : OptionalLong.empty();
        return near.isPresent() ? OptionalLong.of(ticks.micros(near.getAsLong())) : OptionalLong.empty();
    }

    /** Gives whether the frame said anything new, or will once it has waited. */
    private boolean numbered(LateFrames.Entry entry, boolean mayWait) {
        TurnsFrame frame = entry.turns();
        long sequence = frame.sequence().orElseThrow();
        if (memory.isEmpty()) {
            memory.anchor(Math.floorMod(sequence - frame.fresh(), numbers));
            return take(frame, frame.fresh());
        }
        SequenceMemory.Overlap overlap = memory.overlap(frame);
        boolean agrees = overlap != SequenceMemory.Overlap.OTHER;
        if (isOld(frame, overlap)) {
            sameDeviceSession |= overlap == SequenceMemory.Overlap.SAME;
            return false;
        }
        long ahead = memory.ahead(sequence);
        long ceiling = BURST_TURNS + MAX_TURNS_A_SECOND * Math.max(0, now - lastTurnMicros) / 1_000_000;
        boolean plausible = agrees && ahead > 0 && ahead <= numbers / 2 && ahead <= ceiling;
        boolean clockGoesOn =
                hasClock && ticks.peek(frame.ticks().orElseThrow(), now).isPresent();
        boolean clockProves = clockGoesOn && ticks.hasStarted();
        sameDeviceSession |= plausible && (clockProves || overlap == SequenceMemory.Overlap.SAME);
        if (plausible && sameDeviceSession && (!hasClock || clockGoesOn)) {
            return mayWait && ahead > frame.turns().size() ? await(entry, ahead) : take(frame, ahead);
        }
        if (plausible && sameDeviceSession && ahead <= Math.max(1, frame.fresh())) {
            // The numbers go on without a hole: only the clock was set.
            startEpoch(EpochReason.CLOCK_JUMP);
            ticks.restart();
            return take(frame, ahead);
        }
        if (mayWait && !late.isEmpty()) {
            return numberedAfterAllThatWaits(entry);
        }
        restart(plausible && sameDeviceSession ? EpochReason.CLOCK_JUMP : EpochReason.SEQUENCE_RESET);
        memory.anchor(Math.floorMod(sequence - frame.fresh(), numbers));
        return take(frame, frame.fresh());
    }

    /** Takes no frame yet whose gap may close by itself. */
    private boolean await(LateFrames.Entry entry, long ahead) {
        if (ahead <= numbers / MOST_AHEAD_SHARE) {
            late.add(entry);
            return true;
        }
        return late.isEmpty() ? take(entry.turns(), ahead) : numberedAfterAllThatWaits(entry);
    }

    private boolean numberedAfterAllThatWaits(LateFrames.Entry entry) {
        release(Long.MAX_VALUE);
        now = entry.arrivalMicros();
        return numbered(entry, false);
    }

    /** A number from the past is no news, unless its turn, or else the clock, speaks of a restart. */
    private boolean isOld(TurnsFrame frame, SequenceMemory.Overlap overlap) {
        boolean speaksOfRestart = overlap == SequenceMemory.Overlap.OTHER
                || overlap == SequenceMemory.Overlap.NONE
                        && hasClock
                        && !ticks.isNear(frame.ticks().orElseThrow(), now);
        return memory.isPast(frame.sequence().orElseThrow()) && !speaksOfRestart;
    }

    private boolean unnumbered(TurnsFrame frame) {
        Turn turn = frame.turns().get(frame.turns().size() - 1).turn();
        if (hasClock) {
            long stated = frame.ticks().orElseThrow();
            // The same reading after a whole turn of the clock is another moment.
            OptionalLong near = ticks.near(stated, now);
            boolean isCopy = lastTurn.filter(turn::equals).isPresent()
                    && near.isPresent()
                    && near.getAsLong() == ticks.lastTicks();
            if (isCopy) {
                return false;
            }
            if (ticks.peek(stated, now).isEmpty()) {
                restart(EpochReason.CLOCK_JUMP);
            }
        }
        if (!sameDeviceSession) {
            // Nothing tells whether turns were made while the link was down.
            events.add(new TurnsLost(OptionalInt.empty(), now, epochs.current()));
        }
        return frame.fresh() > 0 && take(frame, frame.fresh());
    }

    /** Adds the newest {@code ahead} turns, as far as the frame holds them; the others are lost. */
    private boolean take(TurnsFrame frame, long ahead) {
        sameDeviceSession = true;
        int held = (int) Math.min(ahead, frame.turns().size());
        long newestTicks = 0;
        if (hasClock) {
            newestTicks = ticks.peek(frame.ticks().orElseThrow(), now).orElseThrow();
            if (epochs.last().clock().isTooEarly(ticks.micros(newestTicks), now)) {
                startEpoch(EpochReason.EARLY_ARRIVAL);
            }
        }
        if (ahead > held) {
            events.add(new TurnsLost(
                    OptionalInt.of((int) Math.min(Integer.MAX_VALUE, ahead - held)), now, epochs.current()));
            memory.appendLost(ahead - held);
        }
        for (int back = held - 1; back >= 0; back--) {
            FrameTurn turn = frame.turns().get(frame.turns().size() - 1 - back);
            TurnSource source = back < frame.fresh() ? TurnSource.HEARD : TurnSource.REPAIRED;
            events.add(
                    hasClock && turn.ticks().isPresent()
                            ? onDeviceClock(turn, source, newestTicks)
                            : onArrival(turn, source, back));
            if (frame.sequence().isPresent()) {
                memory.append(turn);
            }
            lastTurn = Optional.of(turn.turn());
        }
        if (held > 0) {
            finish(newestTicks);
        }
        return held > 0 || ahead > 0;
    }

    private void finish(long newestTicks) {
        lastTurnMicros = Math.max(lastTurnMicros, now);
        epochs.last().arrived(now);
        if (hasClock) {
            ticks.accept(newestTicks, now);
            epochs.last().clock().add(ticks.micros(newestTicks), now);
        }
    }

    private StreamEvent onDeviceClock(FrameTurn turn, TurnSource source, long newestTicks) {
        long at = ticks.before(newestTicks, turn.ticks().orElseThrow());
        long earlier = 0;
        if (turn.ticksAreBound()) {
            earlier = ticks.hasStarted()
                    ? Math.max(0, ticks.micros(at) - ticks.micros(ticks.lastTicks()))
                    : Long.MAX_VALUE;
        }
        return new TurnSensed(turn.turn(), source, OptionalLong.of(ticks.micros(at)), earlier, now, epochs.current());
    }

    private StreamEvent onArrival(FrameTurn turn, TurnSource source, int back) {
        long sinceLast = lastTurn.isPresent() ? now - lastTurnMicros : Long.MAX_VALUE;
        return new TurnSensed(
                turn.turn(), source, OptionalLong.empty(), back == 0 ? 0 : sinceLast, now, epochs.current());
    }

    private void report(StateFrame state) {
        boolean clockGoesOn = hasClock && state.ticks().isPresent() && ticks.hasStarted();
        if (clockGoesOn && !ticks.isNear(state.ticks().getAsLong(), now)) {
            long arrived = now;
            release(Long.MAX_VALUE);
            now = arrived;
            restart(EpochReason.CLOCK_JUMP);
            clockGoesOn = false;
        }
        sameDeviceSession |= clockGoesOn;
        OptionalInt turnsAhead = OptionalInt.empty();
        if (state.sequence().isPresent() && numbers > 1) {
            long sequence = state.sequence().getAsLong();
            if (!sameDeviceSession && !memory.isEmpty() && !memory.hasTurns()) {
                // No turn was sensed yet: nothing but the number can tell whether one was made since the last state.
                sameDeviceSession = memory.ahead(sequence) == 0;
                if (!sameDeviceSession) {
                    restart(EpochReason.SEQUENCE_RESET);
                }
            }
            if (memory.isEmpty()) {
                memory.anchor(sequence);
                lastTurnMicros = now;
            }
            if (sameDeviceSession) {
                long ahead = signed(memory.ahead(sequence));
                turnsAhead = OptionalInt.of((int) Math.max(Integer.MIN_VALUE, Math.min(Integer.MAX_VALUE, ahead)));
            }
        }
        events.add(new StateReported(state.state(), turnsAhead, now, epochs.current()));
    }

    /** The device began anew; what it did meanwhile is not known. */
    private void restart(EpochReason reason) {
        startEpoch(reason);
        events.add(new TurnsLost(OptionalInt.empty(), now, epochs.current()));
        memory.clear();
        ticks.restart();
        sameDeviceSession = true;
    }

    private void startEpoch(EpochReason reason) {
        if (epochs.last().hasTurns()) {
            events.add(epochs.start(reason, now));
        }
    }
}
