package fermata.daemon.telling;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.PracticeAnalysis;
import fermata.analysis.event.Event;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.record.TurnRecord;
import fermata.daemon.demo.Rehearsal;
import fermata.daemon.reading.CaptureReader;
import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.Home;
import fermata.daemon.store.Store;
import fermata.daemon.turnfile.PracticeFile;
import fermata.decoder.notation.Sequence;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Three rehearsed evenings in a real store, one solve of the second set right. */
class CorrectedSolvesTest {
    private static final int SOLVES = 5;
    private static final int SAID = 3;

    @TempDir
    Path directory;

    private Store store;
    private CorrectedSolves corrected;
    private String solver;

    @BeforeEach
    void bringEveningsIn() {
        store = Store.openForWriting(new Home(directory), LocalDateTime::now);
        Importer importer = new Importer(store, Clock.fixed(Instant.EPOCH, ZoneId.of("UTC")));
        for (int evening = 1; evening <= 3; evening++) {
            String text = String.join("\n", Rehearsal.evening(SOLVES, evening).lines());
            importer.add(
                    "test",
                    PracticeFile.read("test", text.getBytes(StandardCharsets.UTF_8))
                            .iterator());
        }
        corrected = new CorrectedSolves(store.captures(), new CaptureReader(store.captures()));
        solver = capture(0).start().origin().solver();
    }

    @AfterEach
    void close() {
        store.close();
    }

    private CaptureRow capture(int evening) {
        return store.captures().all().get(evening);
    }

    private List<SolveRecord> solves(int evening) {
        return PracticeAnalysis.solves(
                new CaptureReader(store.captures()).read(capture(evening)).log());
    }

    private void say(SolveRecord solve, String words) {
        CaptureRow capture = capture(1);
        new Afterwards(store.captures())
                .say(
                        capture,
                        at -> new Event.HandStated(
                                solve.id(), words, capture.start().origin(), at));
    }

    private static List<String> solved(List<SolveRecord> solves) {
        return solves.stream()
                .filter(SolveRecord::isSolved)
                .map(SolveRecord::id)
                .toList();
    }

    @Test
    void shouldFindTheSolvesLeftAsReadBeforeTheLastOneSetRight() {
        assertThat(corrected.others(solver)).isEmpty();
        SolveRecord said = solves(1).get(SAID);
        String words = Sequence.ofTurns(
                        said.turns().stream().map(TurnRecord::core).toList())
                .toString();

        say(said, words);

        List<String> others =
                corrected.others(solver).stream().map(SolveRecord::id).toList();
        assertThat(others)
                .containsExactlyElementsOf(List.of(
                                solved(solves(0)), solved(solves(1).subList(0, SAID)))
                        .stream()
                        .flatMap(List::stream)
                        .toList())
                .hasSizeGreaterThan(SOLVES);
        assertThat(corrected.others("somebody else")).isEmpty();

        say(said, "");
        assertThat(corrected.others(solver)).isEmpty();
    }
}
