package fermata.analysis.track;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.CubeState;
import org.junit.jupiter.api.Test;

/**
 * Made-up streams of a cube whose truth is known: turns heard, lost with and without a count, states that come late,
 * early and in the middle of a loss, a solver's word that the cube is solved.
 */
class FollowedCubeTest {
    private static final int STREAMS = 300;
    private static final int STEPS = 120;

    /** How often something was to be seen at all. */
    private int known;

    private int unknown;
    private int told;

    @Test
    void shouldAgreeAfterEverythingThatIsToldWithTheLaterReadingOfTheLog() {
        for (long seed = 1; seed <= STREAMS; seed++) {
            ToldStream stream = new ToldStream(seed);
            for (int step = 0; step < STEPS; step++) {
                stream.step();
                compare(stream, "seed " + seed + " step " + step);
            }
            CubeTracker log = stream.readLog();
            log.stopped();
            stream.live.rested();
            assertThat(stream.live.relative()).as("seed %d at rest", seed).isEqualTo(log.relative());
        }
        assertThat(known).isGreaterThan(STREAMS);
        assertThat(unknown).isGreaterThan(STREAMS);
        assertThat(told).isGreaterThan(STREAMS);
    }

    private void compare(ToldStream stream, String when) {
        CubeTracker log = stream.readLog();
        assertThat(stream.live.relative()).as(when).isEqualTo(log.relative());
        assertThat(stream.live.reference()).as(when).isEqualTo(log.reference());
        if (log.isTold()) {
            assertThat(log.state()).as(when).isEqualTo(stream.truth());
            told++;
        }
        known += log.isKnown() ? 1 : 0;
        unknown += log.isKnown() ? 0 : 1;
    }

    /** A word that nobody can hold against the cube yet is kept when the cube tells where it was all the time. */
    @Test
    void shouldKeepTheSolversWordWhenTheCubeTellsLater() {
        ToldStream stream = new ToldStream(7);
        stream.loseUncounted(3);
        stream.say();
        stream.turn(300_000);
        CubeState seen = stream.live.relative().orElseThrow();
        stream.report(0);

        assertThat(stream.live.relative()).contains(seen);
        assertThat(stream.readLog().relative()).contains(seen);
        assertThat(stream.live.reference()).isNotEqualTo(CubeState.SOLVED);
    }
}
