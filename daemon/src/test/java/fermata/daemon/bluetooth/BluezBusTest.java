package fermata.daemon.bluetooth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fermata.daemon.capture.LinkFault;
import fermata.daemon.time.MonotonicClock;
import fermata.daemon.virtualcube.BluezTemper;
import fermata.daemon.virtualcube.GattService;
import fermata.daemon.virtualcube.Peripheral;
import fermata.daemon.virtualcube.PrivateBus;
import fermata.daemon.virtualcube.VirtualBluez;
import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(30)
class BluezBusTest {
    private static final UUID SERVICE = UUID.fromString("11111111-2222-3333-4444-555555555555");
    private static final UUID VALUE = UUID.fromString("11111111-2222-3333-4444-666666666666");
    private static final String DEVICE = "/org/bluez/hci0/dev_02_00_00_00_00_07";
    private static final Duration CALL_LIMIT = Duration.ofSeconds(10);

    private final MonotonicClock clock = MonotonicClock.scaled(100);
    private final LinkWatch watch = new LinkWatch(clock);
    private final PrivateBus daemon = PrivateBus.start();
    private VirtualBluez bluez;
    private BluezBus bus;

    @BeforeEach
    void comeUp() {
        bluez = VirtualBluez.start(daemon.address(), clock, new Plain(), new BluezTemper());
        bus = BluezBus.open(daemon.address(), watch, CALL_LIMIT);
    }

    @AfterEach
    void goDown() {
        bus.close();
        bluez.close();
        daemon.close();
    }

    @Test
    void shouldDeliverSignalsInOrderOnOneThread() throws Exception {
        int signals = 2000;
        String path = linkAndFindCharacteristic();
        List<Integer> heard = Collections.synchronizedList(new ArrayList<>());
        Map<Thread, Boolean> threads = new ConcurrentHashMap<>();
        CountDownLatch all = new CountDownLatch(signals);
        bus.followDevice(watch.owner().orElseThrow(), DEVICE, signal -> {
            if (BusSignal.read(signal).orElseThrow() instanceof BusSignal.Changed changed
                    && changed.properties().containsKey("Value")) {
                byte[] value = BusValue.bytes(changed.properties().get("Value")).orElseThrow();
                threads.put(Thread.currentThread(), true);
                heard.add(ByteBuffer.wrap(value).getInt());
                all.countDown();
            }
        });
        bus.call(path, BluezBus.CHARACTERISTIC, "StartNotify", "");

        for (int i = 0; i < signals; i++) {
            assertThat(bluez.send(VALUE, ByteBuffer.allocate(4).putInt(i).array()))
                    .isTrue();
        }

        assertThat(all.await(20, TimeUnit.SECONDS)).isTrue();
        assertThat(heard).hasSize(signals).isSorted();
        assertThat(threads).hasSize(1);
    }

    @Test
    void shouldKeepNameAndTextOfAnErrorAndClassifyIt() {
        assertThatThrownBy(() -> bus.call("/org/bluez/hci0", BluezBus.ADAPTER, "StopDiscovery", ""))
                .isInstanceOfSatisfying(
                        LinkException.class, e -> assertThat(e.fault()).isEqualTo(LinkFault.RETRY_SLOW))
                .hasMessageContaining("StopDiscovery on /org/bluez/hci0: org.bluez.Error.Failed No discovery started");
        assertThatThrownBy(() -> bus.call(DEVICE, BluezBus.DEVICE, "Connect", ""))
                .isInstanceOfSatisfying(
                        LinkException.class, e -> assertThat(e.fault()).isEqualTo(LinkFault.RETRY_FAST));
    }

    /** Some buses say by an empty name that a service has no owner. */
    @Test
    void shouldKnowThatTheServiceIsNotThereYetWhenTheBusIs() {
        LinkWatch early = new LinkWatch(clock);
        try (PrivateBus empty = PrivateBus.start();
                BluezBus before = BluezBus.open(empty.address(), early, CALL_LIMIT)) {
            assertThat(early.owner()).isEmpty();

            try (VirtualBluez late = VirtualBluez.start(empty.address(), clock, new Plain(), new BluezTemper())) {
                assertThat(early.await(() -> early.owner().isPresent(), CALL_LIMIT))
                        .isTrue();
                assertThat(early.generation()).isEqualTo(1);
                assertThat(before.objects().devices("/org/bluez/hci0")).isEmpty();
                assertThat(late.isConnected()).isFalse();
            }
        }
    }

    /** A word of the bus may be lost, doubled or late. */
    @Test
    void shouldAskTheBusWhoOwnsTheNameWhenAWordOfItWasNotTrue() {
        watch.ownerChanged(1, Optional.empty());
        assertThat(watch.owner()).isEmpty();

        bus.verifyOwner();

        assertThat(watch.owner()).isPresent();
        assertThat(bus.objects().adapters()).hasSize(1);
    }

    @Test
    void shouldSayWhichBusWhenThereIsNone() {
        assertThatThrownBy(() -> BluezBus.open("unix:path=/nowhere/bus", new LinkWatch(clock), CALL_LIMIT))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("unix:path=/nowhere/bus");
    }

    private String linkAndFindCharacteristic() {
        Subscription ignored = bus.followTree(watch.owner().orElseThrow(), signal -> watch.treeChanged());
        bus.call("/org/bluez/hci0", BluezBus.ADAPTER, "StartDiscovery", "");
        untilTree(() -> !bus.objects().devices("/org/bluez/hci0").isEmpty());
        bus.call(DEVICE, BluezBus.DEVICE, "Connect", "");
        untilTree(() -> bus.objects().characteristics(DEVICE).containsKey(VALUE));
        ignored.close();
        return bus.objects().characteristics(DEVICE).get(VALUE);
    }

    private void untilTree(java.util.function.BooleanSupplier condition) {
        long deadline = System.nanoTime() + CALL_LIMIT.toNanos();
        while (!condition.getAsBoolean()) {
            assertThat(System.nanoTime()).isLessThan(deadline);
            long changes = watch.treeChanges();
            watch.pause(() -> watch.treeChanges() != changes, Duration.ofSeconds(1));
        }
    }

    private record Plain() implements Peripheral {
        @Override
        public String address() {
            return "02:00:00:00:00:07";
        }

        @Override
        public String name() {
            return "plain";
        }

        @Override
        public List<GattService> services() {
            return List.of(new GattService(
                    SERVICE, List.of(new GattService.Characteristic(VALUE, List.of("notify", "read")))));
        }

        @Override
        public byte[] read(UUID characteristic) {
            return new byte[] {1, 2, 3, 4};
        }
    }
}
