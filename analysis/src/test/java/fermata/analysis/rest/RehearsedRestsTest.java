package fermata.analysis.rest;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.beat.PracticedSolve;
import fermata.rehearsal.character.CuberStyle;
import fermata.rehearsal.truth.RestCause;
import java.util.List;
import org.junit.jupiter.api.Test;

/** One character, one evening: the quick part of what {@link RestsProofTest} shows at full size. */
class RehearsedRestsTest {
    private static final List<Performed> SOLVES = Performed.evening(CuberStyle.cook(), 7, 60);

    @Test
    void shouldFindLongRestsAndShareTheirSecondsWhenHoldsAreKnown() {
        RestScore score = RestScore.of(SOLVES, true);

        assertThat(score.precision()).as(score.print("cook")).isGreaterThanOrEqualTo(0.95);
        assertThat(score.recall()).as(score.print("cook")).isGreaterThanOrEqualTo(0.90);
        assertThat(score.estimated.get(Cause.LOOK_AHEAD) / score.truly.get(Cause.LOOK_AHEAD))
                .isBetween(0.85, 1.15);
        assertThat(score.estimated.get(Cause.RECOGNITION) / score.truly.get(Cause.RECOGNITION))
                .isBetween(0.85, 1.15);
    }

    @Test
    void shouldFindLongRestsWhenHoldsAreNotKnown() {
        RestScore score = RestScore.of(SOLVES, false);

        assertThat(score.precision()).as(score.print("cook")).isGreaterThanOrEqualTo(0.95);
        assertThat(score.recall()).as(score.print("cook")).isGreaterThanOrEqualTo(0.90);
    }

    @Test
    void shouldReportEverySlipOnceWhenTurnsWereTakenBack() {
        int found = 0;
        int real = 0;
        for (Performed solve : SOLVES) {
            PracticedSolve practiced = new PracticedSolve(solve.record(), solve.facts(), 0);
            found += RestReader.read(practiced, Rhythm.coldStart()).slips().size();
            real += (int) solve.rests().stream()
                    .filter(rest -> rest.cause() == RestCause.SLIP)
                    .count();
        }

        assertThat(real).isPositive();
        assertThat(found).isBetween(real - 1, real + 1);
    }
}
