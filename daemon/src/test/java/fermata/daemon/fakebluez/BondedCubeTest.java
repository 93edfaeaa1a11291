package fermata.daemon.fakebluez;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.bluetooth.BluetoothCapture;
import fermata.daemon.bluetooth.CaptureTarget;
import fermata.daemon.capture.LinkChange;
import fermata.daemon.capture.LinkFault;
import fermata.daemon.capture.MemoryJournal;
import fermata.daemon.time.MonotonicClock;
import fermata.decoder.stream.OpenLayout;
import java.time.Duration;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A cube whose set-up fails again and again is forgotten to be found anew, unless it is paired with the board. */
@Timeout(60)
class BondedCubeTest {
    private static final Duration LIMIT = Duration.ofSeconds(30);
    private static final int REFUSALS = 4;

    private final MonotonicClock clock = MonotonicClock.scaled(50);
    private final MemoryJournal journal = new MemoryJournal();

    @Test
    void shouldNotForgetAPairedCubeAndSayWhatToDo() throws Exception {
        assertThat(removalsOfCubeThatRefuses(true)).isEmpty();
        assertThat(journal.changes())
                .filteredOn(LinkChange.Refused.class::isInstance)
                .extracting(LinkChange::detail)
                .anyMatch(detail -> detail.startsWith(LinkFault.ASK_HUMAN + " ")
                        && detail.contains("bluetoothctl remove " + FakeTree.CUBE_ADDRESS));
    }

    @Test
    void shouldForgetACubeThatIsNotPaired() throws Exception {
        assertThat(removalsOfCubeThatRefuses(false)).hasSize(1);
    }

    private List<String> removalsOfCubeThatRefuses(boolean paired) throws InterruptedException {
        try (ScriptBus bus = ScriptBus.start();
                FakeBluez bluez = new FakeBluez(bus.address(), clock, new SplittableRandom(7))) {
            bluez.tree().paired = paired;
            bluez.bend(new Bend(Bend.Way.REFUSE, "StartNotify", REFUSALS, "org.bluez.Error.Failed|not now"));
            try (BluetoothCapture capture = BluetoothCapture.start(
                    bus.address(),
                    CaptureTarget.of(OpenLayout.profile()),
                    BluetoothCapture.Settings.usual(),
                    clock,
                    journal,
                    List.of())) {
                journal.await(j -> !j.frames().isEmpty(), LIMIT);
                assertThat(capture.ended()).isNotDone();
                return bluez.removals();
            }
        }
    }
}
