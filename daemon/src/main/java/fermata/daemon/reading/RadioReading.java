package fermata.daemon.reading;

import fermata.analysis.event.CaptureLog;
import fermata.analysis.event.Event;
import fermata.analysis.event.Origin;
import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.Captures.Drop;
import fermata.daemon.store.ToldEvent;
import fermata.daemon.turnfile.StreamClock;
import fermata.decoder.cube.Legality;
import fermata.decoder.stream.RawFrame;
import fermata.decoder.stream.StreamDecoder;
import fermata.decoder.stream.StreamEvent;
import fermata.decoder.stream.StreamEvent.FrameRejected;
import fermata.decoder.stream.StreamEvent.OrientationSensed;
import fermata.decoder.stream.StreamEvent.StateReported;
import fermata.decoder.stream.StreamEvent.TurnSensed;
import fermata.decoder.stream.StreamEvent.TurnsLost;
import fermata.decoder.stream.TurnSource;
import fermata.decoder.stream.TurnTimeline;
import fermata.decoder.stream.profile.ColourNames;
import fermata.decoder.stream.profile.FrameLayout;
import fermata.decoder.stream.profile.StreamProfile;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads a capture's frames into events: decodes them, puts their times on the capture's own clock, and sorts in what
 * was told by a person. One use.
 */
final class RadioReading {
    private static final long NANOS_PER_MICRO = 1_000;

    private final CaptureRow capture;
    private final StreamProfile profile;
    private final Origin origin;
    private final List<Event> events = new ArrayList<>();
    private final List<Pending> pending = new ArrayList<>();
    private long heard;
    private long repaired;
    private long lost;
    private long openGaps;
    private long rejected;
    private long impossible;

    /** A state that the cube reported ahead of so many turns. */
    private record Pending(StateReported state, int turnsAhead) {}

    RadioReading(CaptureRow capture, StreamProfile profile) {
        this.capture = capture;
        this.profile = profile;
        this.origin = capture.start().origin();
    }

    CaptureReading read(List<RawFrame> frames, List<Drop> drops, List<ToldEvent> told) {
        StreamDecoder decoder = new StreamDecoder(profile);
        List<StreamEvent> decoded = decoder.accept(frames);
        TurnTimeline timeline = new TurnTimeline(decoder);
        // Where turns are numbered, the decoder sees for itself what a drop cost.
        List<Drop> unseen = new ArrayList<>(hasSequence() ? List.of() : drops);
        for (StreamEvent event : decoded) {
            addGaps(unseen, event.arrivalMicros());
            take(event, timeline);
        }
        addGaps(unseen, Long.MAX_VALUE);
        settle();
        sortInSamples(decoder, decoded);
        StreamClock clock = hasClock() ? StreamClock.DEVICE : StreamClock.ARRIVAL;
        sortIn(ToldReading.events(capture, clock, told));
        return new CaptureReading(
                new CaptureLog(Long.toString(capture.id()), events),
                clock,
                ColourNames.ofFaces(profile),
                new Tally(heard, repaired, lost, openGaps, rejected, impossible));
    }

    private void take(StreamEvent event, TurnTimeline timeline) {
        if (event instanceof TurnSensed turn) {
            events.add(new Event.Turned(
                    turn.turn(),
                    turn.source(),
                    origin,
                    sinceStart(timeline.next(turn).boardMicros())));
            heard += turn.source() == TurnSource.HEARD ? 1 : 0;
            repaired += turn.source() == TurnSource.REPAIRED ? 1 : 0;
            passed(1);
        } else if (event instanceof TurnsLost gap) {
            addGap(gap.count().orElse(Event.Gap.UNKNOWN_COUNT), gap.arrivalMicros());
        } else if (event instanceof StateReported state) {
            place(state);
        } else if (event instanceof FrameRejected) {
            rejected++;
        }
    }

    /** Adds what was dropped up to a moment. */
    private void addGaps(List<Drop> unseen, long untilMicros) {
        while (!unseen.isEmpty() && unseen.get(0).atNanos() / NANOS_PER_MICRO <= untilMicros) {
            addGap(Event.Gap.UNKNOWN_COUNT, unseen.remove(0).atNanos() / NANOS_PER_MICRO);
        }
    }

    private void addGap(int count, long boardMicros) {
        events.add(new Event.Gap(count, origin, notBefore(sinceStart(boardMicros))));
        if (count == Event.Gap.UNKNOWN_COUNT) {
            openGaps++;
            // How many turns a waiting state is still ahead can no longer be told.
            pending.clear();
        } else {
            lost += count;
            passed(count);
        }
    }

    /** Puts a state exactly between the turns it contains and those it does not; leaves it out if that is not known. */
    private void place(StateReported state) {
        if (state.state().legality() != Legality.LEGAL) {
            impossible++;
        } else if (state.turnsAhead().isPresent()) {
            int ahead = state.turnsAhead().getAsInt();
            if (ahead > 0) {
                pending.add(new Pending(state, ahead));
            } else {
                events.add(indexBefore(-ahead), snapshot(state));
            }
        }
    }

    private Event snapshot(StateReported state) {
        return new Event.Snapshot(state.state(), origin, notBefore(sinceStart(state.arrivalMicros())));
    }

    /** Where in the list the last so many turns begin. */
    private int indexBefore(int turns) {
        int index = events.size();
        for (int left = turns; left > 0 && index > 0; ) {
            index--;
            left -= events.get(index) instanceof Event.Turned ? 1 : 0;
        }
        return index;
    }

    private void passed(int turns) {
        for (int i = 0; i < pending.size(); ) {
            Pending waiting = pending.remove(i);
            int ahead = waiting.turnsAhead() - turns;
            if (ahead == 0) {
                events.add(snapshot(waiting.state()));
            } else if (ahead > 0) {
                pending.add(i++, new Pending(waiting.state(), ahead));
            }
        }
    }

    private long sinceStart(long boardMicros) {
        return Math.max(0, boardMicros - capture.start().startedNanos() / NANOS_PER_MICRO);
    }

    /** A gap or state is told of by a frame that may have come before the turn in front of it was timed. */
    private long notBefore(long micros) {
        return events.isEmpty()
                ? micros
                : Math.max(micros, events.get(events.size() - 1).atMicros());
    }

    /**
     * Takes the times of gaps and states back to the turn after them: a frame that told of both came after that turn
     * was made.
     */
    private void settle() {
        long next = Long.MAX_VALUE;
        for (int index = events.size() - 1; index >= 0; index--) {
            Event event = events.get(index);
            if (event instanceof Event.Gap gap && gap.atMicros() > next) {
                events.set(index, new Event.Gap(gap.turnsLost(), origin, next));
            } else if (event instanceof Event.Snapshot snapshot && snapshot.atMicros() > next) {
                events.set(index, new Event.Snapshot(snapshot.state(), origin, next));
            }
            next = events.get(index).atMicros();
        }
    }

    /** After all else is in its place: by their own time, thinned. */
    private void sortInSamples(StreamDecoder decoder, List<StreamEvent> decoded) {
        List<Event.Oriented> samples = new ArrayList<>();
        for (StreamEvent event : decoded) {
            if (event instanceof OrientationSensed sample) {
                long at = sinceStart(decoder.boardMicrosOf(sample));
                samples.add(new Event.Oriented(sample.attitude(), origin, at));
            }
        }
        List<Event> merged = OrientationSamples.merged(events, samples);
        events.clear();
        events.addAll(merged);
    }

    private void sortIn(List<Event> told) {
        for (Event event : told) {
            int index = events.size();
            while (index > 0 && events.get(index - 1).atMicros() > event.atMicros()) {
                index--;
            }
            events.add(index, event);
        }
    }

    private boolean hasSequence() {
        return turnLayouts().stream().anyMatch(layout -> layout.sequence().isPresent());
    }

    private boolean hasClock() {
        return turnLayouts().stream().anyMatch(layout -> layout.clock().isPresent());
    }

    private List<FrameLayout.Turns> turnLayouts() {
        return profile.subscribe().stream()
                .flatMap(source -> source.frames().stream())
                .filter(FrameLayout.Turns.class::isInstance)
                .map(FrameLayout.Turns.class::cast)
                .toList();
    }
}
