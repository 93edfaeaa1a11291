package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Random damage of a home, by seed: docs/proofs.md. */
class DamagedHomesTest {
    @TempDir
    Path directory;

    @Test
    void shouldLoseNothingUnsaidWhenAHomeIsDamaged() throws Exception {
        run(1, 40);
    }

    @Test
    @Tag("proof")
    void shouldLoseNothingUnsaidWhenHomesAreDamagedThatWereLookedAt() throws Exception {
        run(1, 500);
    }

    /** Seeds that nothing was made to fit. */
    @Test
    @Tag("proof")
    void shouldLoseNothingUnsaidWhenHomesAreDamagedThatNobodyLookedAt() throws Exception {
        run(100_001, 500);
    }

    private void run(long first, int count) throws Exception {
        DamagedHomes homes = new DamagedHomes(directory);
        Map<DamagedHomes.Kind, List<DamagedHomes.Came>> came = new EnumMap<>(DamagedHomes.Kind.class);
        List<AssertionError> failures = new ArrayList<>();
        for (long seed = first; seed < first + count; seed++) {
            try {
                DamagedHomes.Came each = homes.trial(seed);
                came.computeIfAbsent(each.kind(), kind -> new ArrayList<>()).add(each);
            } catch (AssertionError e) {
                failures.add(e);
                e.printStackTrace(System.out);
            }
        }
        came.forEach((kind, all) -> System.out.printf(
                java.util.Locale.ROOT,
                "damage %s, seeds %d to %d: %d homes, %d of %d questions answered at once, %d set aside, %d with rows"
                        + " that did not come back%n",
                kind,
                first,
                first + count - 1,
                all.size(),
                all.stream().mapToInt(DamagedHomes.Came::readable).sum(),
                all.size() * 5,
                all.stream().filter(DamagedHomes.Came::wasSetAside).count(),
                all.stream().filter(each -> each.missing() > 0).count()));
        assertThat(failures).isEmpty();
    }
}
