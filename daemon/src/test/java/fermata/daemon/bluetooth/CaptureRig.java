package fermata.daemon.bluetooth;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.capture.CaptureListener;
import fermata.daemon.capture.FrameJournal;
import fermata.daemon.capture.HeardFrame;
import fermata.daemon.capture.LinkChange;
import fermata.daemon.capture.LossReason;
import fermata.daemon.capture.MemoryJournal;
import fermata.daemon.time.MonotonicClock;
import fermata.daemon.virtualcube.BluezTemper;
import fermata.daemon.virtualcube.CubeTruth;
import fermata.daemon.virtualcube.ScriptedTurn;
import fermata.daemon.virtualcube.VirtualCube;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.OpenLayout;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;

/** A virtual cube and a capture of it, over a real bus, on one scaled clock. */
final class CaptureRig implements AutoCloseable {
    static final Duration LIMIT = Duration.ofSeconds(20);

    final MonotonicClock clock;
    final MemoryJournal journal = new MemoryJournal();
    final VirtualCube cube;
    final BluetoothCapture capture;

    CaptureRig(VirtualCube.Setup setup, BluezTemper temper, double speed) {
        this(setup, temper, speed, BluetoothCapture.Settings.usual(), Optional.empty());
    }

    CaptureRig(
            VirtualCube.Setup setup,
            BluezTemper temper,
            double speed,
            BluetoothCapture.Settings settings,
            Optional<FrameJournal> otherJournal) {
        clock = MonotonicClock.scaled(speed);
        cube = VirtualCube.start(setup, clock, new SplittableRandom(7), temper);
        List<CaptureListener> nobody = List.of();
        capture = BluetoothCapture.start(
                cube.busAddress(),
                CaptureTarget.of(OpenLayout.profile()),
                settings,
                clock,
                otherJournal.orElse(journal),
                nobody);
    }

    /** Turns at three a second with a pause of five seconds after every twentieth; the same for the same seed. */
    static List<ScriptedTurn> script(int turns, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<ScriptedTurn> script = new ArrayList<>();
        long at = 0;
        for (int i = 0; i < turns; i++) {
            at += i % 20 == 0 ? 5_000_000 : 150_000 + random.nextInt(370_000);
            script.add(new ScriptedTurn(at, Turn.ofIndex(random.nextInt(18))));
        }
        return script;
    }

    static VirtualCube.Setup playing(int turns) {
        return VirtualCube.Setup.playing(script(turns, 42));
    }

    CubeTruth awaitFinished() throws Exception {
        return cube.finished().get(LIMIT.toSeconds(), TimeUnit.SECONDS);
    }

    void await(Predicate<MemoryJournal> condition) throws InterruptedException {
        journal.await(condition, LIMIT);
    }

    /** Waits until a link is set up and the first frames of turns are in the journal. */
    void awaitDelivering() throws InterruptedException {
        await(journal -> capture.status().state() == LinkStatus.State.LISTENING
                && !turnFrames().isEmpty());
    }

    /** Waits until a link after the first is set up; on a busy machine the script may be over before the first goes. */
    void awaitNextLink() throws InterruptedException {
        await(journal ->
                count(LinkChange.Connected.class) > 1 && capture.status().state() == LinkStatus.State.LISTENING);
    }

    long count(Class<? extends LinkChange> change) {
        return journal.changes().stream().filter(change::isInstance).count();
    }

    /** The frames of turns in the journal. */
    List<HeardFrame> turnFrames() {
        return journal.frames().stream()
                .filter(frame -> frame.characteristicUuid().equals(OpenLayout.TURNS.toString()))
                .toList();
    }

    /** The sequence number in each frame of turns: bytes 1 and 2, as docs/stream-profile.md has it. */
    List<Integer> sequences() {
        return sequencesOf(turnFrames());
    }

    static List<Integer> sequencesOf(List<HeardFrame> frames) {
        return frames.stream()
                .map(frame -> ByteBuffer.wrap(frame.bytes())
                                .order(ByteOrder.LITTLE_ENDIAN)
                                .getShort(1)
                        & 0xFFFF)
                .toList();
    }

    /** Waits until a link after the first is set up and the last of so many turns was heard, and closes the capture. */
    void awaitComeback(int turns) throws Exception {
        awaitNextLink();
        awaitFinished();
        await(journal -> sequences().contains(turns));
        closeCapture();
    }

    /** Why connections ended, in order. */
    List<LossReason> losses() {
        return journal.changes().stream()
                .filter(LinkChange.Lost.class::isInstance)
                .map(change -> ((LinkChange.Lost) change).reason())
                .toList();
    }

    /** The first attempt that was refused. */
    LinkChange.Refused firstRefusal() {
        return journal.changes().stream()
                .filter(LinkChange.Refused.class::isInstance)
                .map(LinkChange.Refused.class::cast)
                .findFirst()
                .orElseThrow();
    }

    /** Closes the capture and checks that it ended well and that everything is committed. */
    void closeCapture() {
        capture.close();
        assertThat(capture.ended()).isCompleted();
        assertThat(capture.counts().waiting()).isZero();
        assertThat(capture.counts().dropped()).isZero();
    }

    @Override
    public void close() {
        capture.close();
        cube.close();
    }
}
