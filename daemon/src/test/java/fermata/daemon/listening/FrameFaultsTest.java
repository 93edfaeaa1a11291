package fermata.daemon.listening;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.capture.CapturedItem;
import fermata.daemon.capture.HeardFrame;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.OpenLayout;
import fermata.decoder.stream.OpenLayout.MadeTurn;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class FrameFaultsTest {
    private static final String OTHER = "00000000-0000-1000-8000-00805f9b34fb";

    private final StringWriter said = new StringWriter();
    private final FrameFaults faults = new FrameFaults(OpenLayout.profile(), new PrintWriter(said));

    @Test
    void shouldSayWhatIsWrongWithAFrameAFewTimesAndCountTheOthers() {
        byte[] good = OpenLayout.encodeTurns(1, 1, List.of(new MadeTurn(Turn.parse("R"), 10)));
        byte[] corrupt = good.clone();
        corrupt[4] ^= 0x10;
        List<CapturedItem> items = new ArrayList<>();
        items.add(frame(0, good));
        items.add(frame(1, Arrays.copyOf(good, 13)));
        for (int i = 2; i < 9; i++) {
            items.add(frame(i, corrupt));
        }

        faults.committed(items);

        assertThat(said.toString().lines()).hasSize(4);
        assertThat(said.toString()).contains("13 bytes").contains("only counted");
        assertThat(faults.summary()).isEqualTo("1 truncated, 7 wrong checksum");
    }

    @Test
    void shouldSayNothingOfGoodFrames() {
        faults.committed(List.of(frame(0, OpenLayout.encodeBattery(50)), new HeardFrame(1, 1, OTHER, 0, new byte[3])));

        assertThat(said.toString()).isEmpty();
        assertThat(faults.summary()).isEmpty();
    }

    private static HeardFrame frame(long ordinal, byte[] bytes) {
        String characteristic = (bytes.length == 1 ? OpenLayout.BATTERY_LEVEL : OpenLayout.TURNS).toString();
        return new HeardFrame(1, ordinal, characteristic, 0, bytes);
    }
}
