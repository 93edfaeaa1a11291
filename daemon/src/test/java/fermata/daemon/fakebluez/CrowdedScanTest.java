package fermata.daemon.fakebluez;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.bluetooth.BluetoothCapture;
import fermata.daemon.bluetooth.CaptureTarget;
import fermata.daemon.bluetooth.LinkStatus;
import fermata.daemon.capture.MemoryJournal;
import fermata.daemon.time.MonotonicClock;
import fermata.decoder.stream.OpenLayout;
import java.time.Duration;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A scan in a hall full of devices, without the cube. */
@Timeout(60)
class CrowdedScanTest {
    private static final int NEIGHBOURS = 300;
    private static final int NEW_ONES = 200;
    private static final Duration NEW_EVERY = Duration.ofMillis(50);

    private final MonotonicClock clock = MonotonicClock.scaled(4);

    @Test
    void shouldNotReadTheWholeTreeForEveryNeighbourThatComes() throws Exception {
        SplittableRandom random = new SplittableRandom(7);
        MemoryJournal journal = new MemoryJournal();
        try (ScriptBus bus = ScriptBus.start();
                FakeBluez bluez = new FakeBluez(bus.address(), clock, random);
                BluetoothCapture capture = BluetoothCapture.start(
                        bus.address(),
                        CaptureTarget.of(OpenLayout.profile()),
                        BluetoothCapture.Settings.usual(),
                        clock,
                        journal,
                        List.of())) {
            bluez.hide();
            for (int i = 0; i < NEIGHBOURS; i++) {
                bluez.addNeighbour();
            }
            while (capture.status().state() != LinkStatus.State.SCANNING) {
                Thread.sleep(5);
            }
            long from = clock.nanos();
            int readBefore = bluez.treesRead();
            for (int i = 0; i < NEW_ONES; i++) {
                bluez.addNeighbour();
                clock.sleep(NEW_EVERY);
            }
            double seconds = (clock.nanos() - from) / 1e9;

            // Twice a second where the tree is short, and once more for the pause that was running.
            assertThat(bluez.treesRead() - readBefore).isLessThanOrEqualTo((int) (2 * seconds) + 2);
            bluez.appearAgain();
            journal.await(j -> !j.frames().isEmpty(), Duration.ofSeconds(30));
        }
    }
}
