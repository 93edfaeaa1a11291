package fermata.daemon.bluetooth;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.capture.LossReason;
import fermata.daemon.time.MonotonicClock;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class LinkWatchTest {
    private static final String DEVICE = "/org/bluez/hci0/dev_02_00_00_00_00_02";

    private final LinkWatch watch = new LinkWatch(MonotonicClock.system());

    /** The library tells the end of a connection twice; on a busy board the second time comes after the next opened. */
    @Test
    void shouldNotTakeTheEndOfAnOlderBusForThatOfTheNextOne() {
        long first = watch.busOpened();
        watch.busLost(first, "the bus closed the connection");
        assertThat(watch.isBusLost()).isTrue();

        long second = watch.busOpened();
        watch.ownerChanged(second, Optional.of(":1.7"));
        watch.watch(DEVICE, ":1.7");
        watch.busLost(first, "Connection reset");
        watch.ownerChanged(first, Optional.empty());

        assertThat(watch.isBusLost()).isFalse();
        assertThat(watch.isOver()).isFalse();
        assertThat(watch.owner()).contains(":1.7");
        watch.busLost(second, "Connection reset");
        assertThat(watch.loss().map(LinkWatch.Loss::reason)).contains(LossReason.BUS_GONE);
    }

    @Test
    void shouldCountTheLivesOfTheServiceAndCallItsGoingALoss() {
        long life = watch.busOpened();
        watch.ownerChanged(life, Optional.of(":1.7"));
        watch.watch(DEVICE, ":1.7");
        watch.ownerChanged(life, Optional.of(":1.9"));

        assertThat(watch.generation()).isEqualTo(2);
        assertThat(watch.loss().map(LinkWatch.Loss::reason)).contains(LossReason.SERVICE_GONE);
    }

    /** The service may go, or come anew, between the look for the device and the attempt to reach it. */
    @Test
    void shouldCallADeviceLostThatWasFoundInALifeThatIsOver() {
        long life = watch.busOpened();
        watch.ownerChanged(life, Optional.of(":1.9"));

        watch.watch(DEVICE, ":1.7");
        assertThat(watch.loss().map(LinkWatch.Loss::reason)).contains(LossReason.SERVICE_GONE);

        watch.watch(DEVICE, ":1.9");
        assertThat(watch.loss()).isEmpty();

        watch.busLost(life, "Connection reset");
        watch.watch(DEVICE, ":1.9");
        assertThat(watch.loss().map(LinkWatch.Loss::reason)).contains(LossReason.BUS_GONE);
    }

    @Test
    void shouldCallTheGoingOfTheAdapterALossOfTheDeviceOnIt() {
        long life = watch.busOpened();
        watch.ownerChanged(life, Optional.of(":1.7"));
        watch.watch(DEVICE, ":1.7");

        watch.removed("/org/bluez/hci1", List.of(BluezBus.ADAPTER));
        watch.removed("/org/bluez/hci0/dev_02", List.of(BluezBus.DEVICE));
        assertThat(watch.loss()).isEmpty();

        watch.removed("/org/bluez/hci0", List.of(BluezBus.ADAPTER));
        assertThat(watch.loss().map(LinkWatch.Loss::reason)).contains(LossReason.OBJECT_REMOVED);
    }

    @Test
    void shouldKnowThatALinkStandsAgainAfterItFell() {
        long life = watch.busOpened();
        watch.ownerChanged(life, Optional.of(":1.7"));
        watch.watch(DEVICE, ":1.7");
        watch.deviceConnected(DEVICE, true);
        watch.deviceConnected(DEVICE, false);
        watch.deviceConnected(DEVICE, true);

        assertThat(watch.loss().map(LinkWatch.Loss::reason)).contains(LossReason.LINK_DOWN);
        assertThat(watch.isLinked(DEVICE)).isTrue();
        assertThat(watch.linksSeen()).isEqualTo(2);
    }

    @Test
    void shouldTakeNoNoteOfWhatNeighboursDo() {
        long life = watch.busOpened();
        watch.ownerChanged(life, Optional.of(":1.7"));
        watch.watch(DEVICE, ":1.7");
        long changes = watch.treeChanges();

        watch.removed("/org/bluez/hci0/dev_02_00_00_00_00_03", List.of(BluezBus.DEVICE));
        watch.removed("/org/bluez/hci0/dev_02_00_00_00_00_03/service0001", List.of("org.bluez.GattService1"));

        assertThat(watch.treeChanges()).isEqualTo(changes);
    }
}
