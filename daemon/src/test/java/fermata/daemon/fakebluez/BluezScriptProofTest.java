package fermata.daemon.fakebluez;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Many evenings of troubles; see docs/proofs.md. */
@Tag("proof")
class BluezScriptProofTest {
    private static final int SCRIPTS = 2000;
    /** Nothing was chosen or mended on the scripts from here on; they are reported apart. */
    private static final long FIRST_UNSEEN = 7_000_001;

    private static final int UNSEEN = 500;
    private static final int WARM_UP = 100;
    private static final int AT_ONCE = 16;
    /** What a leak of 10 kB a script would come to. */
    private static final long MOST_GROWTH_BYTES = 20_000_000;

    @Test
    void shouldKeepEveryTurnOnceAndComeBackInTheStatedTime() throws Exception {
        BluezScripts.play(1, WARM_UP, AT_ONCE);
        long before = usedBytes();
        BluezScripts.Result result = BluezScripts.play(1, SCRIPTS, AT_ONCE);
        long grown = usedBytes(result) - before;

        report("scripts 1 to " + SCRIPTS, result, grown);
        check(result);
        assertThat(grown).isLessThan(MOST_GROWTH_BYTES);
    }

    @Test
    void shouldDoSoOnScriptsThatNothingWasTunedOn() throws Exception {
        BluezScripts.Result result = BluezScripts.play(FIRST_UNSEEN, UNSEEN, AT_ONCE);

        report("scripts " + FIRST_UNSEEN + " and " + UNSEEN + " more", result, 0);
        check(result);
    }

    private static void check(BluezScripts.Result result) throws InterruptedException {
        assertThat(result.bad()).isEmpty();
        assertThat(result.escaped()).isEmpty();
        assertThat(result.threadsLeft()).isZero();
        for (BluezScript.Outcome late : result.late()) {
            checkAtTheSpeedOfABoard(late.seed());
        }
    }

    /** A script that was late among others, at a speed at which the machine's own limits count fourfold. */
    private static void checkAtTheSpeedOfABoard(long seed) throws InterruptedException {
        BluezScript.Outcome outcome = BluezScript.play(seed, BluezScript.AS_ON_A_BOARD);
        System.out.println("alone and at the speed of a board: " + outcome);
        assertThat(outcome.isGood()).as(outcome.toString()).isTrue();
        assertThat(outcome.comebacks()).noneMatch(BluezScript.Comeback::isLate);
    }

    private static long usedBytes(BluezScripts.Result held) {
        // What the outcomes take is the test's own and does not count.
        long outcomes = held.outcomes().stream()
                .mapToLong(each -> 100L * (each.told().size() + each.kept().size()) + 1000)
                .sum();
        return usedBytes() - outcomes;
    }

    private static long usedBytes() {
        System.gc();
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }

    private static void report(String what, BluezScripts.Result result, long grownBytes) {
        long turns =
                result.outcomes().stream().mapToLong(each -> each.told().size()).sum();
        System.out.printf(
                "%s: %d of %d good, %d late, %d turns told, %d exceptions, %d threads left, heap grown by %d kB%n",
                what,
                result.outcomes().size() - result.bad().size(),
                result.outcomes().size(),
                result.late().size(),
                turns,
                result.escaped().size(),
                result.threadsLeft(),
                grownBytes / 1000);
        System.out.println("| trouble | times | median s | longest s | stated s |");
        System.out.print(result.table());
        result.late().forEach(each -> System.out.println("late: " + each));
        result.bad().forEach(each -> System.out.println("bad: " + each));
    }
}
