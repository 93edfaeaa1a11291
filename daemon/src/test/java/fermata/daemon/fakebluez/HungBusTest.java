package fermata.daemon.fakebluez;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.bluetooth.BluetoothCapture;
import fermata.daemon.bluetooth.CaptureTarget;
import fermata.daemon.capture.LinkChange;
import fermata.daemon.capture.LossReason;
import fermata.daemon.capture.MemoryJournal;
import fermata.daemon.time.MonotonicClock;
import fermata.decoder.stream.OpenLayout;
import java.time.Duration;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A bus that hangs looks as it does when the thread of the library that reads it has died: nothing ever comes. */
@Timeout(120)
class HungBusTest {
    private static final Duration LIMIT = Duration.ofSeconds(60);

    private final MonotonicClock clock = MonotonicClock.scaled(4);
    private final MemoryJournal journal = new MemoryJournal();

    @Test
    void shouldNoticeABusThatSaysNothingAndGoOnWhenAnotherConnectionWorks() throws Exception {
        try (ScriptBus bus = ScriptBus.start();
                FakeBluez bluez = new FakeBluez(bus.address(), clock, new SplittableRandom(7));
                BluetoothCapture capture = BluetoothCapture.start(
                        bus.address(),
                        CaptureTarget.of(OpenLayout.profile()),
                        BluetoothCapture.Settings.usual(),
                        clock,
                        journal,
                        List.of())) {
            journal.await(j -> j.frames().size() > 3, LIMIT);
            bus.freeze();
            journal.await(
                    j -> j.changes().stream()
                            .anyMatch(change ->
                                    change instanceof LinkChange.Lost lost && lost.reason() == LossReason.BUS_GONE),
                    LIMIT);
            bus.thaw();
            int turned = bluez.turned();

            journal.await(j -> j.frames().stream().anyMatch(frame -> isOfTurnAfter(turned, frame.bytes())), LIMIT);
            assertThat(capture.ended()).isNotDone();
        }
    }

    /** Format and number of a turns frame, docs/stream-profile.md. */
    private static boolean isOfTurnAfter(int turned, byte[] frame) {
        return frame.length == OpenLayout.TURNS_BYTES && (frame[1] & 0xFF | (frame[2] & 0xFF) << 8) > turned;
    }
}
