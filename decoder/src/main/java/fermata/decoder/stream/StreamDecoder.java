package fermata.decoder.stream;

import fermata.decoder.clock.ArrivalLattice;
import fermata.decoder.clock.ClockFit;
import fermata.decoder.clock.TickUnwrapper;
import fermata.decoder.stream.StreamEvent.OrientationSensed;
import fermata.decoder.stream.StreamEvent.TurnSensed;
import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.FrameLayout;
import fermata.decoder.stream.profile.StreamProfile;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Stream;

/**
 * Steps over a whole capture: frames in, events out, and at the end the time of every turn.
 *
 * <p>Feed it the frames of one cube in the order of their arrival. The same frames give the same events and times, so
 * that they can be made again from what was stored. A frame costs 2 to 4 us on a desktop, a fit O(n log n) in the turns
 * of its epoch and is kept until the epoch grows; memory is some 30 bytes a turn. Not thread-safe: owned by whoever
 * feeds it.
 */
public final class StreamDecoder {
    /**
     * Error bound where the interval cannot be found: the longest a Linux board asks for by default (hci_core.c: 24 to
     * 40 steps of 1.25 ms).
     */
    public static final long DEFAULT_INTERVAL_MICROS = 50_000;

    private final FrameReader reader;
    private final Epochs epochs = new Epochs();
    private final TurnRepair repair;
    private final Optional<StateTurns> stateTurns;
    private final Map<Integer, Optional<ClockFit>> fits = new HashMap<>();
    private final Map<Integer, OptionalLong> intervals = new HashMap<>();

    /** For one cube; one decoder a capture. */
    public StreamDecoder(StreamProfile profile) {
        this.reader = new FrameReader(profile);
        List<FrameLayout.Turns> turns = Stream.concat(profile.subscribe().stream(), profile.read().stream())
                .flatMap(source -> source.frames().stream())
                .filter(FrameLayout.Turns.class::isInstance)
                .map(FrameLayout.Turns.class::cast)
                .toList();
        int sequenceBits = turns.stream()
                .flatMap(t -> t.sequence().stream())
                .mapToInt(BitField::widthBits)
                .findFirst()
                .orElse(0);
        Optional<FrameLayout.Clock> clock = turns.isEmpty()
                ? states(profile).flatMap(s -> s.clock().stream()).findFirst()
                : turns.stream().flatMap(t -> t.clock().stream()).findFirst();
        TickUnwrapper ticks = clock.map(c -> new TickUnwrapper(c.field().widthBits(), c.tickMicros()))
                .orElseGet(() -> new TickUnwrapper(1, 1));
        this.repair = new TurnRepair(sequenceBits, ticks, clock.isPresent(), epochs);
        this.stateTurns = turns.isEmpty() ? Optional.of(new StateTurns(repair)) : Optional.empty();
    }

    private static Stream<FrameLayout.State> states(StreamProfile profile) {
        return profile.subscribe().stream()
                .flatMap(source -> source.frames().stream())
                .filter(FrameLayout.State.class::isInstance)
                .map(FrameLayout.State.class::cast);
    }

    /**
     * What one more frame says, or one that came before it and waited.
     *
     * <p>A frame from which turns are missing waits, with all that it says, for a frame that it may have overtaken:
     * until that comes, {@link #settle} gives up, or a frame comes a second later or over another connection. So events
     * are in the order of the turns, and none is ever taken back.
     */
    public List<StreamEvent> accept(RawFrame frame) {
        int before = epochs.current();
        FrameReading reading = reader.read(frame.characteristic(), frame.bytes());
        List<StreamEvent> events = stateTurns.isPresent() && reading instanceof FrameReading.StateFrame state
                ? stateTurns.get().accept(frame, state)
                : repair.accept(frame, reading);
        return noted(before, events);
    }

    /** What a whole capture says: its frames in order, and no more after them. */
    public List<StreamEvent> accept(Iterable<RawFrame> frames) {
        List<StreamEvent> events = new ArrayList<>();
        frames.forEach(frame -> events.addAll(accept(frame)));
        events.addAll(settle(Long.MAX_VALUE));
        return events;
    }

    /**
     * Lets go what has waited a second for a frame that was overtaken.
     *
     * @param nowMicros of the board's monotonic clock; {@link Long#MAX_VALUE} if no frame comes any more
     */
    public List<StreamEvent> settle(long nowMicros) {
        return noted(epochs.current(), repair.settle(nowMicros));
    }

    private List<StreamEvent> noted(int epochBefore, List<StreamEvent> events) {
        if (!events.isEmpty()) {
            for (int epoch = Math.max(0, epochBefore); epoch <= epochs.current(); epoch++) {
                fits.remove(epoch);
                intervals.remove(epoch);
            }
        }
        return events;
    }

    /** The line of an epoch, from the turns so far; empty without a device clock or without turns. */
    public Optional<ClockFit> fit(int epoch) {
        return fits.computeIfAbsent(epoch, e -> epochs.get(e).clock().fit());
    }

    /** The connection interval of an epoch, found from its arrivals; empty if they do not show one. */
    public OptionalLong intervalMicros(int epoch) {
        return intervals.computeIfAbsent(
                epoch, e -> ArrivalLattice.intervalMicros(epochs.get(e).arrivals()));
    }

    /**
     * When a turn was made, as far as is known now: once all frames are in, that is final. Never falls from turn to
     * turn of one epoch; {@link TurnTimeline} also holds that over epochs.
     */
    public TurnTime timeOf(TurnSensed turn) {
        Optional<ClockFit> fit = turn.deviceMicros().isPresent() ? fit(turn.epoch()) : Optional.empty();
        if (fit.isPresent()) {
            long board = fit.get().boardMicros(turn.deviceMicros().getAsLong());
            return new TurnTime(board, turn.earlierByMicros(), TurnTime.Basis.DEVICE);
        }
        long interval = intervalMicros(turn.epoch()).orElse(DEFAULT_INTERVAL_MICROS);
        return new TurnTime(turn.arrivalMicros(), Math.max(interval, turn.earlierByMicros()), TurnTime.Basis.ARRIVAL);
    }

    /** When an orientation was sensed, in microseconds of the board's clock, as far as is known now. */
    public long boardMicrosOf(OrientationSensed sample) {
        Optional<ClockFit> fit = sample.deviceMicros().isPresent() ? fit(sample.epoch()) : Optional.empty();
        return fit.map(line -> line.boardMicros(sample.deviceMicros().getAsLong()))
                .orElse(sample.arrivalMicros());
    }
}
