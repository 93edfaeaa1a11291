package fermata.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.record.Boundary;
import fermata.analysis.record.Method;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.record.StageRecord;
import fermata.rehearsal.EveningPlan;
import fermata.rehearsal.VirtualCuber;
import fermata.rehearsal.character.CuberStyle;
import fermata.rehearsal.truth.AttemptTruth;
import fermata.rehearsal.truth.Evening;
import fermata.rehearsal.truth.StageTruth;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Held against the truth of the virtual cuber, who knows nothing of the analysis. */
class RehearsalTruthTest {
    private static final Map<Evening, Map<Integer, SolveRecord>> EVENINGS = new LinkedHashMap<>();

    @BeforeAll
    static void rehearse() {
        for (long seed = 1; seed <= 4; seed++) {
            VirtualCuber cuber =
                    new VirtualCuber(CuberStyle.characters().get((int) seed % 3), new SplittableRandom(seed));
            Evening evening = cuber.evening(EveningPlan.ofSolves(25));
            EVENINGS.put(evening, found(evening));
        }
    }

    @Test
    void shouldFindEveryAttemptWhereItBeganWhenItsScrambleWasAnnounced() {
        for (Evening evening : EVENINGS.keySet()) {
            Map<Integer, SolveRecord> found = EVENINGS.get(evening);
            for (AttemptTruth truth : evening.attempts()) {
                if (truth.scramble().announced() && truth.solve().turns().length() > 0) {
                    SolveRecord record = found.get(truth.solve().turns().from());
                    assertThat(record).as("attempt " + truth.number()).isNotNull();
                    assertThat(record.attempt().scramble().boundary()).isNotEqualTo(Boundary.INFERRED);
                    assertThat(record.isSolved()).isEqualTo(truth.solve().solved());
                }
            }
        }
    }

    @Test
    void shouldInferMostBeginningsWhenTheScrambleWasMadeUp() {
        int all = 0;
        int right = 0;
        double promised = 0;
        for (Evening evening : EVENINGS.keySet()) {
            Map<Integer, SolveRecord> found = EVENINGS.get(evening);
            for (AttemptTruth truth : evening.attempts()) {
                if (!truth.scramble().announced() && truth.solve().turns().length() >= 8) {
                    all++;
                    SolveRecord record = found.get(truth.solve().turns().from());
                    right += record == null ? 0 : 1;
                    promised += record == null ? 0 : record.attempt().scramble().probability();
                }
            }
        }
        System.out.printf("made-up scrambles: %d of %d ends found, promised %.1f%n", right, all, promised);
        assertThat((double) right / all).isGreaterThanOrEqualTo(0.95);
    }

    @Test
    void shouldFindTheStagesOfTheTruthWhenSolved() {
        Map<String, Integer> off = new TreeMap<>();
        int stages = 0;
        int solves = 0;
        for (Evening evening : EVENINGS.keySet()) {
            Map<Integer, SolveRecord> found = EVENINGS.get(evening);
            for (AttemptTruth truth : evening.attempts()) {
                SolveRecord record = found.get(truth.solve().turns().from());
                if (record != null && record.method() == Method.CFOP) {
                    solves++;
                    stages += truth.solve().stages().size();
                    compare(truth, record, off);
                }
            }
        }
        int missed = off.values().stream().mapToInt(Integer::intValue).sum();
        System.out.printf(
                "rehearsed stage ends: %d solves, %d of %d as in the truth, off: %s%n",
                solves, stages - missed, stages, off);
        assertThat((double) missed / stages).isLessThanOrEqualTo(0.02);
    }

    private static void compare(AttemptTruth truth, SolveRecord record, Map<String, Integer> off) {
        Map<String, StageRecord> read = record.stages().stream()
                .collect(Collectors.toMap(stage -> stage.name().written(), stage -> stage));
        for (StageTruth stage : truth.solve().stages()) {
            StageRecord same = read.get(stage.name());
            if (same.span().to() + record.firstTurn() != stage.turns().to()) {
                off.merge(stage.name(), 1, Integer::sum);
            }
        }
    }

    private static Map<Integer, SolveRecord> found(Evening evening) {
        return PracticeAnalysis.solves(RehearsedEvening.log(evening)).stream()
                .collect(Collectors.toMap(SolveRecord::firstTurn, record -> record));
    }
}
