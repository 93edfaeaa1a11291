package fermata.daemon.live;

import fermata.analysis.event.Event;
import fermata.analysis.event.Origin;
import fermata.analysis.track.CubeTracker;
import fermata.analysis.track.FollowedCube;
import fermata.daemon.bluetooth.LinkStatus;
import fermata.daemon.capture.CaptureListener;
import fermata.daemon.capture.CapturedItem;
import fermata.daemon.capture.DroppedFrames;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
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
import fermata.decoder.stream.profile.ColourNames;
import fermata.decoder.stream.profile.StreamProfile;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.UUID;
import java.util.function.Supplier;

/**
 * The running capture as its board reads it: a few microseconds of the writer's time a frame. Everything in it is
 * guarded by the board.
 */
public final class LiveCapture implements CaptureListener {
    private static final long NANOS_PER_MICRO = 1_000;

    final FollowedCube cube = new FollowedCube();
    final LiveCourse evening = new LiveCourse();
    final Map<Face, String> colours;
    private final LiveBoard board;
    private final StreamDecoder decoder;
    private final Origin origin;
    private final boolean numbersTurns;
    private final TurnPace pace = new TurnPace();
    private Optional<TellingJournal> journal = Optional.empty();
    private Optional<Supplier<LinkStatus>> status = Optional.empty();
    private OptionalInt battery = OptionalInt.empty();
    private OptionalLong lastHeardMicros = OptionalLong.empty();

    LiveCapture(LiveBoard board, StreamProfile profile, Origin origin) {
        this.board = board;
        this.origin = origin;
        this.numbersTurns = profile.numbersTurns();
        this.decoder = new StreamDecoder(profile);
        this.colours = Map.copyOf(ColourNames.ofFaces(profile));
    }

    /**
     * Says what could not be known before the capture was begun.
     *
     * @param linkStatus where the link is; asked several times a second
     * @param tellingJournal where announced scrambles are kept
     */
    public void attach(Supplier<LinkStatus> linkStatus, TellingJournal tellingJournal) {
        synchronized (board) {
            status = Optional.of(linkStatus);
            journal = Optional.of(tellingJournal);
        }
    }

    /** The capture is over. */
    public void end() {
        board.ended(this);
    }

    Optional<TellingJournal> journal() {
        return journal;
    }

    LinkView link() {
        return status.map(Supplier::get).map(LinkView::of).orElse(LinkView.IDLE);
    }

    OptionalInt battery() {
        return battery;
    }

    @Override
    public void committed(List<CapturedItem> items) {
        synchronized (board) {
            for (CapturedItem item : items) {
                if (item instanceof fermata.daemon.capture.HeardFrame frame) {
                    decoder.accept(new RawFrame(
                                    (int) frame.connection(),
                                    UUID.fromString(frame.characteristicUuid()),
                                    frame.arrivalNanos(),
                                    frame.bytes()))
                            .forEach(this::take);
                } else if (item instanceof DroppedFrames drop && !numbersTurns) {
                    // Where turns are numbered, the decoder sees for itself what a drop cost.
                    lost(OptionalInt.empty(), drop.atNanos() / NANOS_PER_MICRO);
                }
            }
        }
    }

    /** Takes the turns that waited in vain for a frame that was overtaken, which are shown up to a second late. */
    void settle(long nowMicros) {
        decoder.settle(nowMicros).forEach(this::take);
    }

    private void take(StreamEvent event) {
        CubeState reference = cube.reference();
        read(event);
        if (!cube.reference().equals(reference)) {
            board.keepReference(this, event.arrivalMicros());
        }
    }

    private void read(StreamEvent event) {
        event.visit(new Reading());
    }

    /** What the next of the decoder's events is to the evening. */
    private final class Reading implements StreamEvent.Visitor {
        @Override
        public void turnSensed(TurnSensed turn) {
            turned(turn);
        }

        @Override
        public void turnsLost(TurnsLost gap) {
            lost(gap.count(), gap.arrivalMicros());
        }

        @Override
        public void stateReported(StateReported report) {
            if (isNews(report)) {
                jumpedIf(true, report.arrivalMicros());
                board.tellEvening(LiveCapture.this);
            }
        }

        @Override
        public void orientationSensed(OrientationSensed sample) {}

        @Override
        public void batteryReported(BatteryReported report) {
            battery = OptionalInt.of(report.percent());
        }

        @Override
        public void epochStarted(EpochStarted epoch) {}

        @Override
        public void frameRejected(FrameRejected frame) {}

        @Override
        public void frameRepeated(FrameRepeated frame) {}
    }

    private void lost(OptionalInt count, long atMicros) {
        boolean found = cube.lost(new Event.Gap(count.orElse(Event.Gap.UNKNOWN_COUNT), origin, atMicros));
        evening.lost();
        board.heardLoss();
        jumpedIf(found, atMicros);
        board.tellEvening(this);
    }

    private boolean isNews(StateReported report) {
        return report.state().legality() == Legality.LEGAL
                && report.turnsAhead().isPresent()
                && cube.reported(
                        new Event.Snapshot(report.state(), origin, report.arrivalMicros()),
                        report.turnsAhead().getAsInt());
    }

    /** Where the turning stopped a pause ago, that may tell what was lost. */
    void restedBy(long nowMicros) {
        if (lastHeardMicros.isPresent()
                && nowMicros - lastHeardMicros.getAsLong() >= CubeTracker.PAUSE_MICROS
                && cube.rested()) {
            jumpedIf(true, nowMicros);
            board.tellEvening(this);
        }
    }

    /** Somebody says that the cube in the hand is solved. */
    void solvedHere(long atMicros) {
        cube.solvedHere(origin, atMicros);
    }

    private void turned(TurnSensed sensed) {
        lastHeardMicros = OptionalLong.of(sensed.arrivalMicros());
        long atMicros = pace.atMicros(sensed);
        board.heard(sensed);
        boolean jumped = cube.turned(new Event.Turned(sensed.turn(), sensed.source(), origin, atMicros));
        Optional<LiveCourse.Done> done =
                evening.turned(sensed.turn(), cube.relative(), atMicros, sensed.arrivalMicros());
        jumpedIf(jumped, sensed.arrivalMicros());
        done.ifPresent(scramble -> board.keepScramble(this, scramble));
        board.offerIfIdle(this);
        board.tellTurn(this, sensed, atMicros);
    }

    private void jumpedIf(boolean jumped, long atMicros) {
        if (jumped) {
            evening.jumped(cube.relative(), atMicros);
            board.offerIfIdle(this);
        }
    }
}
