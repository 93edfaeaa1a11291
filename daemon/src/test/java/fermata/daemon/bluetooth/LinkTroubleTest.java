package fermata.daemon.bluetooth;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.capture.CapturedItem;
import fermata.daemon.capture.HeardFrame;
import fermata.daemon.capture.LinkChange;
import fermata.daemon.capture.LinkEvent;
import fermata.daemon.capture.LinkFault;
import fermata.daemon.capture.LossReason;
import fermata.daemon.capture.PipelineSettings;
import fermata.daemon.virtualcube.BluezTemper;
import fermata.daemon.virtualcube.CubeTruth;
import fermata.daemon.virtualcube.RadioModel;
import fermata.daemon.virtualcube.ScriptedTurn;
import fermata.daemon.virtualcube.VirtualCube;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.OpenLayout;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The failures that users of BlueZ have reported, as scripts of the virtual BlueZ. */
@Timeout(60)
class LinkTroubleTest {
    private static final int TURNS = 120;
    private static final double SPEED = 200;

    @ParameterizedTest
    @ValueSource(ints = {1, 5})
    void shouldTryAgainWhenTheLinkIsAbortedLocally(int times) throws Exception {
        BluezTemper temper = new BluezTemper().failConnects(times, "le-connection-abort-by-local");
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(TURNS), temper, SPEED)) {
            heardCompletely(rig);

            assertThat(rig.capture.counts().faults(LinkFault.RETRY_FAST)).isEqualTo(times);
            assertThat(rig.capture.counts().connections()).isEqualTo(1);
            assertThat(rig.firstRefusal().error()).contains("org.bluez.Error.Failed le-connection-abort-by-local");
        }
    }

    @Test
    void shouldCancelAndTryAgainWhenADeadClientsAttemptHangs() throws Exception {
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(TURNS), new BluezTemper().hangInProgress(2), SPEED)) {
            heardCompletely(rig);

            assertThat(rig.firstRefusal().error()).contains("org.bluez.Error.InProgress");
        }
    }

    @Test
    void shouldHangUpAndTryAgainWhenServicesAreNeverResolved() throws Exception {
        try (CaptureRig rig = impatient(new BluezTemper().neverResolve(1))) {
            heardCompletely(rig);

            assertThat(rig.cube.bluez().scansAndLinks()).containsExactly(2, 2);
            assertThat(rig.firstRefusal().error()).contains("were not resolved");
            assertThat(rig.losses()).containsExactly(LossReason.SET_UP_FAILED, LossReason.STOPPED);
        }
    }

    @Test
    void shouldTryAgainWhenServicesAreResolvedButAbsent() throws Exception {
        try (CaptureRig rig = impatient(new BluezTemper().resolveWithoutObjects(1))) {
            heardCompletely(rig);

            assertThat(rig.firstRefusal().error()).contains("lack").contains(OpenLayout.TURNS.toString());
        }
    }

    @Test
    void shouldForgetTheDeviceWhenItsServicesStayAbsent() throws Exception {
        try (CaptureRig rig = impatient(new BluezTemper().resolveWithoutObjects(3))) {
            heardCompletely(rig);

            assertThat(rig.cube.bluez().removals()).isEqualTo(1);
        }
    }

    @Test
    void shouldConnectBeforeTheScanEndsWhenUnconnectedDevicesAreDroppedAtOnce() throws Exception {
        BluezTemper temper = new BluezTemper().forgetAfterScan(Duration.ZERO);
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(TURNS), temper, SPEED)) {
            heardCompletely(rig);

            assertThat(rig.cube.bluez().scansAndLinks()).containsExactly(1, 1);
            assertThat(rig.cube.bluez().discoveryFilter()).containsOnlyKeys("UUIDs", "Transport", "DuplicateData");
            assertThat(rig.count(LinkChange.Refused.class)).isZero();
        }
    }

    @Test
    void shouldKeepTheLinkWhenAForeignObjectIsRemoved() throws Exception {
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(TURNS), new BluezTemper(), SPEED)) {
            rig.awaitDelivering();
            rig.cube.bluez().announceRemoval("/org/bluez/hci0/dev_AA_BB_CC_DD_EE_FF", List.of("org.bluez.Device1"));
            rig.cube
                    .bluez()
                    .announceRemoval(
                            "/org/bluez/hci0/dev_AA_BB_CC_DD_EE_FF/service0010/char0011",
                            List.of("org.bluez.GattCharacteristic1"));
            heardCompletely(rig);

            assertThat(rig.losses()).containsExactly(LossReason.STOPPED);
        }
    }

    @Test
    void shouldSubscribeAgainWhenItsCharacteristicsMove() throws Exception {
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(TURNS), new BluezTemper(), SPEED)) {
            rig.awaitDelivering();
            rig.cube.bluez().moveServices(Duration.ofSeconds(1));
            rig.awaitComeback(TURNS);

            assertThat(rig.losses()).containsExactly(LossReason.OBJECT_REMOVED, LossReason.STOPPED);
            assertThat(rig.journal.changes())
                    .filteredOn(LinkChange.Connected.class::isInstance)
                    .extracting(change -> ((LinkChange.Connected) change).adopted())
                    .containsExactly(false, true);
            assertThat(rig.sequences()).isSorted().doesNotHaveDuplicates();
        }
    }

    @Test
    void shouldHearEachFrameOnceAfterManyReconnects() throws Exception {
        int turns = 300;
        // Slow enough that four links are cut and made anew within the script, 3 s here, on a busy machine too.
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(turns), new BluezTemper(), SPEED / 4)) {
            for (int cut = 0; cut < 4; cut++) {
                long connection = cut + 1;
                rig.await(journal -> rig.turnFrames().stream().anyMatch(frame -> frame.connection() == connection));
                rig.cube.bluez().dropLink(Duration.ofSeconds(2));
            }
            CubeTruth truth = rig.awaitFinished();
            rig.await(journal -> rig.turnFrames().size() >= truth.notificationsSent());
            rig.closeCapture();

            assertThat(rig.turnFrames()).hasSize((int) truth.notificationsSent());
            assertThat(rig.sequences()).isSorted().doesNotHaveDuplicates().endsWith(turns);
            assertThat(rig.capture.counts().reconnects()).isEqualTo(4);
            assertThat(rig.journal.items())
                    .extracting(item -> item.connection() + "." + item.ordinal())
                    .doesNotHaveDuplicates();
        }
    }

    @Test
    void shouldComeBackWhenTheRadioCutsTheLink() throws Exception {
        RadioModel cutting = RadioModel.healthy().cutting(0.1, Duration.ofSeconds(2));
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(TURNS).over(cutting), new BluezTemper(), SPEED)) {
            CubeTruth truth = rig.awaitFinished();
            rig.await(journal -> rig.turnFrames().size() >= truth.notificationsSent());
            rig.closeCapture();

            assertThat(truth.cuts()).isPositive();
            assertThat(truth.turnsMade()).isEqualTo(TURNS);
            // A link that is cut again while it is being set up may never have been noticed.
            assertThat(rig.capture.counts().reconnects()).isBetween(1L, truth.cuts());
            assertThat(rig.sequences()).isSorted().doesNotHaveDuplicates().endsWith(TURNS);
        }
    }

    @Test
    void shouldKeepTheValueThatComesBeforeTheAnswerToTheSubscription() throws Exception {
        BluezTemper temper = new BluezTemper().notifyBeforeAnswer(1);
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(TURNS), temper, SPEED)) {
            rig.awaitFinished();
            rig.await(journal -> rig.turnFrames().size() == TURNS + 1);
            rig.closeCapture();

            // Before the first turn the characteristic holds nothing; the early value is that nothing.
            assertThat(rig.turnFrames().get(0).bytes()).isEmpty();
            assertThat(CaptureRig.sequencesOf(rig.turnFrames().subList(1, TURNS + 1)))
                    .isEqualTo(BluetoothCaptureTest.upFrom(1, TURNS));
        }
    }

    @Test
    void shouldReadStateAndBatteryAfterSubscribing() throws Exception {
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(TURNS), new BluezTemper(), SPEED)) {
            heardCompletely(rig);

            int subscribed = indexOf(rig, LinkChange.Subscribed.class);
            List<CapturedItem> items = rig.journal.items();
            assertThat(read(items.subList(0, subscribed))).isEmpty();
            assertThat(read(items.subList(subscribed, items.size())))
                    .contains(OpenLayout.STATE.toString(), OpenLayout.BATTERY_LEVEL.toString());
        }
    }

    @Test
    void shouldNoteTheLongestValueThatTheLinkCarries() throws Exception {
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(TURNS), new BluezTemper(), SPEED)) {
            heardCompletely(rig);

            assertThat(rig.journal.changes())
                    .filteredOn(LinkChange.Resolved.class::isInstance)
                    .extracting(LinkChange::detail)
                    .containsExactly("mtu 247");
        }
    }

    private static long statesRead(CaptureRig rig) {
        return rig.journal.frames().stream()
                .filter(frame -> frame.characteristicUuid().equals(OpenLayout.STATE.toString()))
                .count();
    }

    @Test
    void shouldAskWhetherTheCubeIsThereWhenItIsSilent() throws Exception {
        BluetoothCapture.Settings settings = settings(CentralSettings.usual().withSilenceLimit(Duration.ofSeconds(2)));
        try (CaptureRig rig = new CaptureRig(longPause(), new BluezTemper(), SPEED, settings, Optional.empty())) {
            rig.await(journal -> statesRead(rig) >= 4);
            rig.closeCapture();

            assertThat(rig.losses()).containsExactly(LossReason.STOPPED);
        }
    }

    @Test
    void shouldReconnectWhenASilentCubeDoesNotAnswer() throws Exception {
        BluetoothCapture.Settings settings = settings(CentralSettings.usual().withSilenceLimit(Duration.ofSeconds(2)));
        BluezTemper temper = new BluezTemper();
        try (CaptureRig rig = new CaptureRig(longPause(), temper, SPEED, settings, Optional.empty())) {
            rig.awaitDelivering();
            do {
                // It may meet the read of the battery, which nothing hangs on; then the next states are read.
                temper.failReads(1, "Operation failed with ATT error: 0x0e");
                long known = statesRead(rig);
                rig.await(journal -> !rig.losses().isEmpty() || statesRead(rig) > known + 1);
            } while (rig.losses().isEmpty());
            rig.await(journal -> rig.count(LinkChange.Subscribed.class) == 2
                    && rig.capture.status().state() == LinkStatus.State.LISTENING);
            assertThat(rig.cube.bluez().send(OpenLayout.TURNS, new byte[] {42})).isTrue();
            rig.await(journal -> rig.turnFrames().stream().anyMatch(frame -> frame.bytes()[0] == 42));
            rig.closeCapture();

            assertThat(rig.losses()).containsExactly(LossReason.SILENT, LossReason.STOPPED);
            assertThat(rig.capture.counts().reconnects()).isEqualTo(1);
        }
    }

    @Test
    void shouldSaySoAndTryAgainWhenItsOwnRequestIsCalledWrong() throws Exception {
        BluezTemper temper = new BluezTemper().failConnects(1, "le-connection-invalid-arguments");
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(TURNS), temper, SPEED)) {
            heardCompletely(rig);

            assertThat(rig.firstRefusal().fault()).isEqualTo(LinkFault.BUG);
            assertThat(rig.firstRefusal().error()).contains("le-connection-invalid-arguments");
        }
    }

    private static VirtualCube.Setup longPause() {
        return VirtualCube.Setup.playing(
                List.of(new ScriptedTurn(0, Turn.parse("R")), new ScriptedTurn(200_000_000, Turn.parse("U'"))));
    }

    private static CaptureRig impatient(BluezTemper temper) {
        // A limit is never below its own length in machine time, so that a good link, 2 ms here, is resolved well
        // within it.
        Duration soon = Duration.ofMillis(300);
        CentralSettings usual = CentralSettings.usual();
        CentralSettings settings = new CentralSettings(
                usual.callLimit(), usual.connectLimit(), soon, usual.silenceLimit(), Optional.empty(), false);
        return new CaptureRig(CaptureRig.playing(TURNS), temper, SPEED, settings(settings), Optional.empty());
    }

    private static BluetoothCapture.Settings settings(CentralSettings central) {
        return new BluetoothCapture.Settings(central, PipelineSettings.forBoard());
    }

    private static void heardCompletely(CaptureRig rig) throws Exception {
        rig.awaitFinished();
        rig.await(journal -> rig.turnFrames().size() >= TURNS);
        rig.closeCapture();
        assertThat(rig.sequences()).isEqualTo(BluetoothCaptureTest.upFrom(1, TURNS));
    }

    /** What came other than turns, which a busy machine mixes in. */
    private static List<String> read(List<CapturedItem> items) {
        return items.stream()
                .filter(HeardFrame.class::isInstance)
                .map(item -> ((HeardFrame) item).characteristicUuid())
                .filter(uuid -> !uuid.equals(OpenLayout.TURNS.toString()))
                .toList();
    }

    private static int indexOf(CaptureRig rig, Class<? extends LinkChange> kind) {
        for (int i = 0; i < rig.journal.items().size(); i++) {
            if (rig.journal.items().get(i) instanceof LinkEvent event && kind.isInstance(event.change())) {
                return i;
            }
        }
        throw new AssertionError("no " + kind.getSimpleName() + " in " + rig.journal.items());
    }
}
