package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.bluetooth.BluetoothCapture;
import fermata.daemon.bluetooth.CaptureTarget;
import fermata.daemon.bluetooth.CentralSettings;
import fermata.daemon.capture.CapturedItem;
import fermata.daemon.capture.HeardFrame;
import fermata.daemon.capture.MemoryJournal;
import fermata.daemon.capture.PipelineSettings;
import fermata.daemon.time.MonotonicClock;
import fermata.daemon.virtualcube.BluezTemper;
import fermata.daemon.virtualcube.ScriptedTurn;
import fermata.daemon.virtualcube.VirtualCube;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.OpenLayout;
import java.time.Duration;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class TurnsHeardTest {
    private static final int POLLS = 4;

    @Test
    void shouldHearNothingWhenTheBoardAsksARestingCube() throws Exception {
        MonotonicClock clock = MonotonicClock.scaled(10);
        MemoryJournal journal = new MemoryJournal();
        TurnsHeard heard = new TurnsHeard(OpenLayout.profile());
        CentralSettings often = CentralSettings.usual().withSilenceLimit(Duration.ofSeconds(2));
        List<ScriptedTurn> script =
                List.of(new ScriptedTurn(0, Turn.ofIndex(0)), new ScriptedTurn(400_000, Turn.ofIndex(0)));
        try (VirtualCube cube = VirtualCube.start(
                        VirtualCube.Setup.playing(script), clock, new SplittableRandom(3), new BluezTemper());
                BluetoothCapture capture = BluetoothCapture.start(
                        cube.busAddress(),
                        CaptureTarget.of(OpenLayout.profile()),
                        new BluetoothCapture.Settings(often, PipelineSettings.forBoard()),
                        clock,
                        journal,
                        List.of(heard))) {
            journal.await(
                    kept -> kept.frames().stream()
                                    .filter(TurnsHeardTest::isState)
                                    .count()
                            > POLLS,
                    Duration.ofSeconds(30));
            assertThat(capture.counts().received()).isGreaterThan(2 + POLLS);
        }

        assertThat(heard.count()).isEqualTo(2);
        // A cube that connects again tells the last turns once more.
        List<CapturedItem> turns = journal.frames().stream()
                .filter(frame -> frame.characteristicUuid().equals(OpenLayout.TURNS.toString()))
                .map(CapturedItem.class::cast)
                .toList();
        heard.committed(turns.subList(turns.size() - 1, turns.size()));
        assertThat(heard.count()).isEqualTo(2);
    }

    private static boolean isState(HeardFrame frame) {
        return !frame.characteristicUuid().equals(OpenLayout.TURNS.toString());
    }
}
