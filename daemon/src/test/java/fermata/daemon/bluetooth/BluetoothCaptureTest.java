package fermata.daemon.bluetooth;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.capture.LinkChange;
import fermata.daemon.capture.RawFrame;
import fermata.daemon.virtualcube.BluezTemper;
import fermata.daemon.virtualcube.CubeTruth;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class BluetoothCaptureTest {
    @Test
    void shouldHearAWholeEveningInOrderWhenTheLinkIsHealthy() throws Exception {
        try (CaptureRig rig = new CaptureRig(CaptureRig.playing(400), new BluezTemper(), 200)) {
            CubeTruth truth = rig.awaitFinished();
            rig.await(journal -> rig.turnFrames().size() == truth.notificationsSent());
            rig.closeCapture();

            assertThat(truth.turnsMade()).isEqualTo(400);
            assertThat(truth.notificationsSent()).isEqualTo(400);
            assertThat(rig.sequences()).isEqualTo(upFrom(1, 400));
            assertThat(rig.journal.frames()).extracting(RawFrame::arrivalNanos).isSorted();
            assertThat(rig.capture.counts().connections()).isEqualTo(1);
            assertThat(rig.journal.changes())
                    .extracting(LinkChange::kind)
                    .containsExactly("service", "discovered", "connected", "resolved", "subscribed", "lost");
        }
    }

    static List<Integer> upFrom(int first, int last) {
        return IntStream.rangeClosed(first, last).boxed().toList();
    }
}
