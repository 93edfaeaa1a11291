package fermata.daemon.process;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(60)
class OwnProcessTest {
    private static final int HEAP_MEGABYTES = 96;

    @TempDir
    Path directory;

    /** What is printed is data to somebody; a virtual machine says on the side that it picked up options, say. */
    @Test
    void shouldGiveWhatIsPrintedAndNotWhatIsSaidAside() {
        Path file = directory.resolve("evening.jsonl");

        String printed = OwnProcess.run(HEAP_MEGABYTES, List.of("rehearse", "--solves=1", "--seed=1", file.toString()));

        assertThat(file).isNotEmptyFile();
        assertThat(printed).isEmpty();
    }

    @Test
    void shouldSayWhatWentWrong() {
        assertThatThrownBy(() -> OwnProcess.run(HEAP_MEGABYTES, List.of("scramble", "--count=0")))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("fermata scramble")
                .hasMessageContaining("ended with code 2")
                .hasMessageContaining("--count 0 is not in 1..1000");
    }
}
