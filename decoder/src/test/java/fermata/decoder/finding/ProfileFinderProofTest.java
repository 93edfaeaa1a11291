package fermata.decoder.finding;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.madeup.MadeUpCubes;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Four hundred cubes that nobody has built, and forty that keep what they say to themselves: docs/finding.md. */
@Tag("proof")
class ProfileFinderProofTest {
    private static final int PLAIN = 400;
    private static final int ENCIPHERED = 40;

    /** First of a range that nothing was tuned on: the finder was made on the seeds below 200 and 1001 to 1400. */
    private static final long FIRST_SEED = 2001;

    @Test
    void shouldReadEveryTurnOfFreshEveningsWhenLayoutsAreDrawnBySeed() {
        Map<String, int[]> families = new TreeMap<>();
        List<String> unsound = new ArrayList<>();
        List<String> enciphered = new ArrayList<>();
        long slowestNanos = 0;
        for (long seed = FIRST_SEED; seed < FIRST_SEED + PLAIN; seed++) {
            FindingRun run = FindingRun.of(MadeUpCubes.plain(seed));
            slowestNanos = Math.max(slowestNanos, run.findingNanos());
            int[] counts = families.computeIfAbsent(run.cube().family().toString(), f -> new int[2]);
            counts[1]++;
            if (run.isSound() && run.wrong().isEmpty()) {
                counts[0]++;
            } else if (run.isSound()) {
                unsound.add(run.wrong() + " " + run.cube().describe());
            } else if (run.finding() instanceof Finding.Doubtful doubtful) {
                assertThat(doubtful.doubts()).isNotEmpty();
                System.out.println(seed + " " + run.cube().family() + " " + doubtful.doubts());
            } else {
                enciphered.add(run.cube().describe());
            }
        }
        families.forEach((family, counts) -> System.out.println(family + ": " + counts[0] + " of " + counts[1]));
        System.out.println("slowest finding: " + slowestNanos / 1_000_000 + " ms");
        unsound.forEach(System.out::println);
        int sound = families.values().stream().mapToInt(counts -> counts[0]).sum();
        assertThat(unsound).isEmpty();
        assertThat(enciphered).isEmpty();
        assertThat(sound).isGreaterThanOrEqualTo(PLAIN * 95 / 100);
    }

    @Test
    void shouldNameEveryCipherWhenFramesAreEnciphered() {
        for (long seed = FIRST_SEED; seed < FIRST_SEED + ENCIPHERED; seed++) {
            assertThat(ProfileFinder.find(MadeUpCubes.enciphered(seed).drill()))
                    .as("seed " + seed)
                    .isInstanceOf(Finding.Enciphered.class);
        }
    }
}
