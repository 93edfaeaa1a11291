package fermata.daemon.live;

import fermata.daemon.bluetooth.LinkStatus;
import fermata.daemon.capture.CaptureListener;
import fermata.daemon.capture.CapturedItem;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.stream.RawFrame;
import fermata.decoder.stream.StreamDecoder;
import fermata.decoder.stream.StreamEvent;
import fermata.decoder.stream.StreamEvent.BatteryReported;
import fermata.decoder.stream.StreamEvent.StateReported;
import fermata.decoder.stream.StreamEvent.TurnSensed;
import fermata.decoder.stream.StreamEvent.TurnsLost;
import fermata.decoder.stream.profile.ColourNames;
import fermata.decoder.stream.profile.StreamProfile;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import java.util.function.Supplier;

/**
 * The running capture as its board reads it: a few microseconds of the writer's time a frame. Everything in it is
 * guarded by the board.
 */
public final class LiveCapture implements CaptureListener {
    final TrackedCube cube = new TrackedCube();
    final LiveCourse evening = new LiveCourse();
    final Map<Face, String> colours;
    private final LiveBoard board;
    private final StreamDecoder decoder;
    private final TurnPace pace = new TurnPace();
    private Optional<TellingJournal> journal = Optional.empty();
    private Optional<Supplier<LinkStatus>> status = Optional.empty();
    private OptionalInt battery = OptionalInt.empty();

    LiveCapture(LiveBoard board, StreamProfile profile) {
        this.board = board;
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
        if (event instanceof TurnSensed turn) {
            turned(turn);
        } else if (event instanceof TurnsLost gap) {
            boolean found = cube.lost(gap.count());
            evening.lost();
            board.heardLoss();
            jumpedIf(found, gap.arrivalMicros());
            board.tellEvening(this);
        } else if (event instanceof StateReported report) {
            if (cube.reported(report)) {
                jumpedIf(true, report.arrivalMicros());
                board.tellEvening(this);
            }
        } else if (event instanceof BatteryReported report) {
            battery = OptionalInt.of(report.percent());
        }
    }

    private void turned(TurnSensed sensed) {
        long atMicros = pace.atMicros(sensed);
        board.heard(sensed);
        boolean jumped = cube.turned(sensed.turn());
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
