package fermata.daemon.reading;

import fermata.analysis.event.CaptureLog;
import fermata.analysis.event.Event;
import fermata.analysis.event.Origin;
import fermata.analysis.track.StreamOrder;
import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.Captures.Drop;
import fermata.daemon.store.ToldEvent;
import fermata.daemon.turnfile.StreamClock;
import fermata.decoder.cube.Legality;
import fermata.decoder.stream.RawFrame;
import fermata.decoder.stream.StreamDecoder;
import fermata.decoder.stream.StreamEvent;
import fermata.decoder.stream.StreamEvent.BatteryReported;
import fermata.decoder.stream.StreamEvent.EpochStarted;
import fermata.decoder.stream.StreamEvent.FrameRejected;
import fermata.decoder.stream.StreamEvent.FrameRepeated;
import fermata.decoder.stream.StreamEvent.OrientationSensed;
import fermata.decoder.stream.StreamEvent.StateReported;
import fermata.decoder.stream.StreamEvent.TurnSensed;
import fermata.decoder.stream.StreamEvent.TurnsLost;
import fermata.decoder.stream.TurnSource;
import fermata.decoder.stream.TurnTimeline;
import fermata.decoder.stream.profile.ColourNames;
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
    private final StreamOrder order = new StreamOrder();
    private long heard;
    private long repaired;
    private long lost;
    private long openGaps;
    private long rejected;
    private long impossible;

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
        List<Drop> unseen = new ArrayList<>(profile.numbersTurns() ? List.of() : drops);
        Taking taking = new Taking(timeline);
        for (StreamEvent event : decoded) {
            addGaps(unseen, event.arrivalMicros());
            event.visit(taking);
        }
        addGaps(unseen, Long.MAX_VALUE);
        List<Event> events = withSamples(order.settled(), decoder, decoded);
        StreamClock clock = profile.timesTurns() ? StreamClock.DEVICE : StreamClock.ARRIVAL;
        sortIn(events, ToldReading.events(capture, clock, told));
        return new CaptureReading(
                new CaptureLog(Long.toString(capture.id()), events),
                clock,
                ColourNames.ofFaces(profile),
                new Tally(heard, repaired, lost, openGaps, rejected, impossible));
    }

    /** What each of the decoder's events is to the log. Samples of the motion sensor come in later, by their time. */
    private final class Taking implements StreamEvent.Visitor {
        private final TurnTimeline timeline;

        Taking(TurnTimeline timeline) {
            this.timeline = timeline;
        }

        @Override
        public void turnSensed(TurnSensed turn) {
            order.turned(new Event.Turned(
                    turn.turn(),
                    turn.source(),
                    origin,
                    sinceStart(timeline.next(turn).boardMicros())));
            heard += turn.source() == TurnSource.HEARD ? 1 : 0;
            repaired += turn.source() == TurnSource.REPAIRED ? 1 : 0;
        }

        @Override
        public void turnsLost(TurnsLost gap) {
            addGap(gap.count().orElse(Event.Gap.UNKNOWN_COUNT), gap.arrivalMicros());
        }

        @Override
        public void stateReported(StateReported report) {
            place(report);
        }

        @Override
        public void orientationSensed(OrientationSensed sample) {}

        @Override
        public void batteryReported(BatteryReported report) {}

        @Override
        public void epochStarted(EpochStarted epoch) {}

        @Override
        public void frameRejected(FrameRejected frame) {
            rejected++;
        }

        @Override
        public void frameRepeated(FrameRepeated frame) {}
    }

    /** Adds what was dropped up to a moment. */
    private void addGaps(List<Drop> unseen, long untilMicros) {
        while (!unseen.isEmpty() && unseen.get(0).atNanos() / NANOS_PER_MICRO <= untilMicros) {
            addGap(Event.Gap.UNKNOWN_COUNT, unseen.remove(0).atNanos() / NANOS_PER_MICRO);
        }
    }

    private void addGap(int count, long boardMicros) {
        order.lost(new Event.Gap(count, origin, sinceStart(boardMicros)));
        if (count == Event.Gap.UNKNOWN_COUNT) {
            openGaps++;
        } else {
            lost += count;
        }
    }

    /** Puts a state exactly between the turns it contains and those it does not; leaves it out if that is not known. */
    private void place(StateReported state) {
        if (state.state().legality() != Legality.LEGAL) {
            impossible++;
        } else if (state.turnsAhead().isPresent()) {
            long at = sinceStart(state.arrivalMicros());
            order.reported(
                    new Event.Snapshot(state.state(), origin, at),
                    state.turnsAhead().getAsInt());
        }
    }

    private long sinceStart(long boardMicros) {
        return Math.max(0, boardMicros - capture.start().startedNanos() / NANOS_PER_MICRO);
    }

    /** After all else is in its place: by their own time, thinned. */
    private List<Event> withSamples(List<Event> events, StreamDecoder decoder, List<StreamEvent> decoded) {
        List<Event.Oriented> samples = new ArrayList<>();
        for (StreamEvent event : decoded) {
            if (event instanceof OrientationSensed sample) {
                long at = sinceStart(decoder.boardMicrosOf(sample));
                samples.add(new Event.Oriented(sample.attitude(), origin, at));
            }
        }
        return new ArrayList<>(OrientationSamples.merged(events, samples));
    }

    private static void sortIn(List<Event> events, List<Event> told) {
        for (Event event : told) {
            int index = events.size();
            while (index > 0 && events.get(index - 1).atMicros() > event.atMicros()) {
                index--;
            }
            events.add(index, event);
        }
    }
}
