package fermata.daemon.bluetooth;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.capture.LinkChange;
import fermata.daemon.capture.LinkFault;
import fermata.daemon.capture.LossReason;
import fermata.daemon.capture.PipelineSettings;
import fermata.daemon.virtualcube.BluezTemper;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.freedesktop.dbus.connections.impl.DBusConnection;
import org.freedesktop.dbus.connections.impl.DBusConnectionBuilder;
import org.freedesktop.dbus.interfaces.Properties;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What happens to a board in years: its adapter, its Bluetooth service and its bus come and go under a capture. */
@Timeout(60)
class BoardTroubleTest {
    private static final int TURNS = 120;
    private static final double SPEED = 200;

    @Test
    void shouldStartAnewWhenTheServiceIsRestarted() throws Exception {
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(TURNS), new BluezTemper(), SPEED)) {
            // Perhaps still in the middle of the set-up: the loss is the same.
            rig.await(journal -> rig.turnFrames().size() > 5);
            rig.cube.bluez().restart(Duration.ofSeconds(2));
            rig.awaitComeback(TURNS);

            assertThat(rig.losses()).containsExactly(LossReason.SERVICE_GONE, LossReason.STOPPED);
            assertThat(rig.journal.changes())
                    .filteredOn(LinkChange.Service.class::isInstance)
                    .containsExactly(
                            new LinkChange.Service(true, 1),
                            new LinkChange.Service(false, 1),
                            new LinkChange.Service(true, 2));
            assertThat(rig.sequences()).isSorted().doesNotHaveDuplicates();
        }
    }

    @Test
    void shouldPowerTheAdapterOnAgainWhenItIsSwitchedOff() throws Exception {
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(TURNS), new BluezTemper(), SPEED)) {
            rig.awaitDelivering();
            rig.cube.bluez().setPowered(false);
            rig.awaitComeback(TURNS);

            assertThat(rig.losses()).containsExactly(LossReason.LINK_DOWN, LossReason.STOPPED);
        }
    }

    @Test
    void shouldComeBackOnAnAdapterThatWasPulledOutAndPutBack() throws Exception {
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(TURNS), new BluezTemper(), SPEED)) {
            rig.awaitDelivering();
            rig.cube.bluez().unplug(Duration.ofSeconds(40));
            rig.awaitComeback(TURNS);

            assertThat(rig.losses()).containsExactly(LossReason.OBJECT_REMOVED, LossReason.STOPPED);
            assertThat(rig.sequences()).isSorted().doesNotHaveDuplicates();
        }
    }

    @Test
    void shouldScanAnewWhenTheAdapterIsPulledOutDuringAScan() throws Exception {
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(TURNS), new BluezTemper(), SPEED)) {
            rig.awaitDelivering();
            rig.cube.bluez().dropLink(Duration.ofSeconds(60));
            rig.await(journal -> rig.capture.status().state() == LinkStatus.State.SCANNING);
            rig.cube.bluez().unplug(Duration.ofSeconds(40));
            rig.awaitComeback(TURNS);

            assertThat(rig.losses()).containsExactly(LossReason.LINK_DOWN, LossReason.STOPPED);
        }
    }

    @Test
    void shouldScanAnewWhenTheAdapterIsSwitchedOffDuringAScan() throws Exception {
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(TURNS), new BluezTemper(), SPEED)) {
            rig.awaitDelivering();
            rig.cube.bluez().dropLink(Duration.ofSeconds(60));
            rig.await(journal -> rig.capture.status().state() == LinkStatus.State.SCANNING);
            rig.cube.bluez().setPowered(false);
            rig.awaitComeback(TURNS);

            assertThat(rig.firstRefusal().error()).contains("the scan ended");
            assertThat(rig.losses()).containsExactly(LossReason.LINK_DOWN, LossReason.STOPPED);
        }
    }

    @Test
    void shouldScanAnewAndSaySoWhenTheControllerHearsNothing() throws Exception {
        BluezTemper temper = new BluezTemper().hearNothing(2);
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(TURNS), temper, SPEED)) {
            rig.await(journal -> rig.capture.status().detail().contains("scan begun anew once"));
            rig.awaitFinished();
            rig.await(journal -> rig.turnFrames().size() >= TURNS);
            rig.closeCapture();

            assertThat(rig.cube.bluez().scansAndLinks()).containsExactly(3, 1);
            assertThat(rig.count(LinkChange.Refused.class)).isZero();
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void shouldSwitchAHangingAdapterOffAndOnIfItMay(boolean mayReset) throws Exception {
        CentralSettings central = CentralSettings.usual();
        BluetoothCapture.Settings settings = new BluetoothCapture.Settings(
                mayReset ? central.owningAdapter() : central, PipelineSettings.forBoard());
        BluezTemper temper = new BluezTemper();
        List<Object> switched = new CopyOnWriteArrayList<>();
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(TURNS), temper, SPEED, settings, Optional.empty());
                DBusConnection onlooker = DBusConnectionBuilder.forAddress(rig.cube.busAddress())
                        .withShared(false)
                        .build()) {
            onlooker.addSigHandler(Properties.PropertiesChanged.class, signal -> {
                Object powered = BusValue.bare(signal.getPropertiesChanged().get("Powered"));
                if (powered != null) {
                    switched.add(powered);
                }
            });
            rig.awaitDelivering();
            temper.failConnects(1, "le-connection-memory-allocation");
            rig.cube.bluez().dropLink(Duration.ofSeconds(1));
            rig.awaitComeback(TURNS);

            assertThat(rig.capture.counts().faults(LinkFault.RESET_ADAPTER)).isEqualTo(1);
            assertThat(switched).containsExactlyElementsOf(mayReset ? List.of(false, true) : List.of());
        }
    }

    @Test
    void shouldWaitForTheAdapterWhenTheServiceIsBackBeforeIt() throws Exception {
        BluezTemper temper = new BluezTemper();
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(TURNS), temper, SPEED)) {
            rig.awaitDelivering();
            temper.adapterLate(Duration.ofSeconds(4));
            rig.cube.bluez().restart(Duration.ofSeconds(2));
            rig.awaitComeback(TURNS);

            assertThat(rig.capture.counts().faults(LinkFault.ASK_HUMAN)).isZero();
            assertThat(rig.losses()).containsExactly(LossReason.SERVICE_GONE, LossReason.STOPPED);
        }
    }

    @Test
    void shouldComeBackWhenTheBusItselfIsRestarted() throws Exception {
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(TURNS), new BluezTemper(), SPEED)) {
            rig.awaitDelivering();
            rig.cube.restartBus();
            rig.awaitComeback(TURNS);

            assertThat(rig.losses()).containsExactly(LossReason.BUS_GONE, LossReason.STOPPED);
            assertThat(rig.sequences()).isSorted().doesNotHaveDuplicates();
        }
    }

    @Test
    void shouldSayThatTheBusIsGoneAndEndWhenTold() throws Exception {
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(TURNS), new BluezTemper(), SPEED)) {
            rig.awaitDelivering();
            rig.cube.killBus();
            rig.await(journal -> rig.losses().contains(LossReason.BUS_GONE));
            rig.await(journal -> rig.count(LinkChange.Refused.class) > 0);
            rig.closeCapture();

            assertThat(rig.capture.status().state()).isEqualTo(LinkStatus.State.STOPPED);
        }
    }
}
