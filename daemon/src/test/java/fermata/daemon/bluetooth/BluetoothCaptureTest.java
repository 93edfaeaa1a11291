package fermata.daemon.bluetooth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fermata.daemon.capture.CapturedItem;
import fermata.daemon.capture.FrameJournal;
import fermata.daemon.capture.HeardFrame;
import fermata.daemon.capture.JournalException;
import fermata.daemon.capture.LinkChange;
import fermata.daemon.capture.MemoryJournal;
import fermata.daemon.capture.PipelineSettings;
import fermata.daemon.time.MonotonicClock;
import fermata.daemon.virtualcube.BluezTemper;
import fermata.daemon.virtualcube.CubeTruth;
import fermata.daemon.virtualcube.GattService;
import fermata.daemon.virtualcube.Peripheral;
import fermata.daemon.virtualcube.PrivateBus;
import fermata.daemon.virtualcube.RadioModel;
import fermata.daemon.virtualcube.VirtualBluez;
import fermata.decoder.stream.profile.StreamProfile.KeepAlive;
import fermata.decoder.stream.profile.StreamProfile.Write;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class BluetoothCaptureTest {
    private static final double SPEED = 200;

    @Test
    void shouldHearAWholeEveningInOrderWhenTheLinkIsHealthy() throws Exception {
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(400), new BluezTemper(), SPEED)) {
            CubeTruth truth = rig.awaitFinished();
            rig.await(journal -> rig.turnFrames().size() == truth.notificationsSent());
            rig.closeCapture();

            assertThat(truth).isEqualTo(new CubeTruth(400, 400, 400, 0, 0, 0, 0));
            assertThat(rig.sequences()).isEqualTo(upFrom(1, 400));
            assertThat(rig.turnFrames()).extracting(HeardFrame::arrivalNanos).isSorted();
            assertThat(rig.capture.counts().connections()).isEqualTo(1);
            assertThat(rig.journal.changes())
                    .extracting(LinkChange::kind)
                    .containsExactly("service", "discovered", "connected", "resolved", "subscribed", "lost");
        }
    }

    @Test
    void shouldMissExactlyWhatTheRadioLostAndDoubleExactlyWhatItDoubled() throws Exception {
        RadioModel losing = RadioModel.healthy().losing(0.1, 0.1);
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(200).over(losing), new BluezTemper(), SPEED)) {
            CubeTruth truth = rig.awaitFinished();
            rig.await(journal -> rig.turnFrames().size() == truth.notificationsSent() + truth.sentTwice());
            rig.closeCapture();

            assertThat(truth.lostOnPurpose()).isBetween(5L, 50L);
            assertThat(truth.sentTwice()).isBetween(5L, 50L);
            assertThat(truth.notificationsSent() + truth.lostOnPurpose()).isEqualTo(200);
            assertThat(rig.sequences()).isSorted();
            assertThat(rig.sequences().stream().distinct()).hasSize((int) truth.notificationsSent());
        }
    }

    @Test
    void shouldAdoptALinkThatIsUpAlready() throws Exception {
        MonotonicClock clock = MonotonicClock.scaled(SPEED);
        MemoryJournal journal = new MemoryJournal();
        Diary diary = new Diary();
        try (PrivateBus daemon = PrivateBus.start();
                VirtualBluez bluez = VirtualBluez.start(daemon.address(), clock, diary, new BluezTemper())) {
            bluez.bringUp();
            try (BluetoothCapture capture = start(daemon, diary.target(), clock, journal)) {
                journal.await(
                        j -> !j.frames().isEmpty() && capture.status().state() == LinkStatus.State.LISTENING,
                        CaptureRig.LIMIT);

                assertThat(journal.changes()).contains(new LinkChange.Connected(diary.address(), true));
                assertThat(bluez.scansAndLinks()).containsExactly(0, 1);
            }
            assertThat(bluez.isConnected()).isFalse();
        }
    }

    @Test
    void shouldWriteOnConnectAndKeepAlive() throws Exception {
        MonotonicClock clock = MonotonicClock.scaled(SPEED);
        Diary diary = new Diary();
        try (PrivateBus daemon = PrivateBus.start();
                VirtualBluez bluez = VirtualBluez.start(daemon.address(), clock, diary, new BluezTemper());
                BluetoothCapture capture = start(daemon, diary.target(), clock, new MemoryJournal())) {
            assertThat(diary.enough.await(20, TimeUnit.SECONDS)).isTrue();

            assertThat(bluez.scansAndLinks()).containsExactly(1, 1);
            assertThat(capture.counts().faults()).isEmpty();
            assertThat(diary.written.stream().limit(3)).containsExactly("[1, 2]", "[9]", "[9]");
        }
    }

    @Test
    void shouldStopWithTheJournalsErrorAndKeepWhatWasAcknowledged() throws Exception {
        MemoryJournal kept = new MemoryJournal();
        AtomicInteger calls = new AtomicInteger();
        FrameJournal failing = items -> {
            if (calls.incrementAndGet() > 20) {
                kept.failWith(JournalException.Fault.READ_ONLY);
            }
            kept.append(items);
        };
        BluetoothCapture.Settings usual = BluetoothCapture.Settings.usual();
        try (CaptureRig rig =
                new CaptureRig(CaptureRig.playing(400), new BluezTemper(), SPEED, usual, Optional.of(failing))) {
            assertThatThrownBy(() -> rig.capture.ended().get(20, TimeUnit.SECONDS))
                    .hasCauseInstanceOf(JournalException.class)
                    .hasMessageContaining("READ_ONLY");

            assertThat(rig.capture.counts().committed()).isEqualTo(kept.frames().size());
            assertThat(kept.items())
                    .extracting(CapturedItem::ordinal)
                    .startsWith(0L, 1L)
                    .hasSizeGreaterThan(10);
            assertThat(rig.capture.status().state()).isEqualTo(LinkStatus.State.STOPPED);
        }
    }

    @Test
    void shouldSayThatTheDiskRefusesAsLongAsItDoes() throws Exception {
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(400), new BluezTemper(), SPEED)) {
            rig.awaitDelivering();
            rig.journal.failWith(JournalException.Fault.DISK_FAILING);
            rig.await(journal -> rig.capture.status().state() == LinkStatus.State.HELD_IN_MEMORY);
            assertThat(rig.capture.status().detail()).isEqualTo("journal test.db: DISK_FAILING");

            rig.journal.failWith(null);
            rig.awaitFinished();
            rig.await(journal ->
                    rig.turnFrames().size() == 400 && rig.capture.status().state() == LinkStatus.State.LISTENING);
            rig.closeCapture();
            assertThat(rig.sequences()).isEqualTo(upFrom(1, 400));
        }
    }

    private static BluetoothCapture start(
            PrivateBus daemon, CaptureTarget target, MonotonicClock clock, FrameJournal journal) {
        BluetoothCapture.Settings settings =
                new BluetoothCapture.Settings(CentralSettings.usual(), PipelineSettings.forBoard());
        return BluetoothCapture.start(daemon.address(), target, settings, clock, journal, List.of());
    }

    static List<Integer> upFrom(int first, int last) {
        return IntStream.rangeClosed(first, last).boxed().toList();
    }

    /** A peripheral that is known by its name and remembers what was written to it. */
    private static final class Diary implements Peripheral {
        private static final UUID VALUE = UUID.fromString("11111111-2222-3333-4444-666666666666");
        private static final UUID CONTROL = UUID.fromString("11111111-2222-3333-4444-777777777777");

        final ConcurrentLinkedQueue<String> written = new ConcurrentLinkedQueue<>();
        final CountDownLatch enough = new CountDownLatch(3);

        CaptureTarget target() {
            return new CaptureTarget(
                    Optional.empty(),
                    Optional.of(Pattern.compile("di.ry")),
                    List.of(VALUE),
                    List.of(VALUE),
                    List.of(new Write(CONTROL, new byte[] {1, 2}, true)),
                    List.of(new KeepAlive(new Write(CONTROL, new byte[] {9}, false), 10_000)),
                    Set.of());
        }

        @Override
        public String address() {
            return "02:00:00:00:00:08";
        }

        @Override
        public String name() {
            return "diary";
        }

        @Override
        public List<GattService> services() {
            return List.of(new GattService(
                    UUID.fromString("11111111-2222-3333-4444-555555555555"),
                    List.of(
                            new GattService.Characteristic(VALUE, List.of("notify", "read")),
                            new GattService.Characteristic(CONTROL, List.of("write", "write-without-response")))));
        }

        @Override
        public byte[] read(UUID characteristic) {
            return new byte[] {7};
        }

        @Override
        public void written(UUID characteristic, byte[] value) {
            written.add(java.util.Arrays.toString(value));
            enough.countDown();
        }
    }
}
