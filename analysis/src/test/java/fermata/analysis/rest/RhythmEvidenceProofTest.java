package fermata.analysis.rest;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.beat.HandFacts;
import fermata.analysis.beat.PracticedSolve;
import fermata.analysis.event.OwnTimes;
import fermata.rehearsal.character.CuberStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * What yesterday's rhythm, and before there is one a drill, do to the telling of rotations: three made-up characters of
 * whom nothing else is known.
 */
@Tag("proof")
class RhythmEvidenceProofTest {
    private static final long SEED = 2026;
    private static final int SOLVES = 50;
    private static final int FIRST_EVENING = 30;

    /** How rotations and holds were told. */
    private static final class Told {
        private double logScore;
        private int turns;
        private int holdsRight;
        private int real;
        private int found;
        private int wrong;

        static Told of(List<Performed> solves, InferredHands hands, Rhythm yesterday) {
            Told told = new Told();
            for (Performed solve : solves) {
                told.add(solve.facts(), hands.of(solve, yesterday));
            }
            return told;
        }

        private void add(HandFacts truth, HandFacts facts) {
            for (int turn = 1; turn < truth.turns().size(); turn++) {
                boolean isRotated = truth.turns().get(turn).rotationProbability() > 0.5;
                double given = facts.turns().get(turn).rotationProbability();
                logScore += Math.log(Math.max(1e-9, isRotated ? given : 1 - given));
                turns++;
                holdsRight += facts.turns()
                                .get(turn)
                                .hold()
                                .equals(truth.turns().get(turn).hold())
                        ? 1
                        : 0;
                real += isRotated ? 1 : 0;
                found += isRotated && given > 0.5 ? 1 : 0;
                wrong += !isRotated && given > 0.5 ? 1 : 0;
            }
        }

        double mean() {
            return logScore / turns;
        }

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "log score %.4f, %d of %d rotations found, %d wrong ones, holds right %.3f",
                    mean(),
                    found,
                    real,
                    wrong,
                    holdsRight / (double) turns);
        }
    }

    @Test
    void shouldTellRotationsBetterByYesterdaysRhythm() {
        double gained = 0;
        for (CuberStyle style : CuberStyle.characters()) {
            InferredHands hands = new InferredHands(OwnTimes.NONE);
            Rhythm rhythm = rhythmOf(Performed.evening(style, SEED, SOLVES), hands);
            List<Performed> next = Performed.evening(style, SEED + 1, SOLVES);
            Told without = Told.of(next, hands, Rhythm.coldStart());
            Told with = Told.of(next, hands, rhythm);
            System.out.println(style.name() + ", the solve's own median: " + without);
            System.out.println(style.name() + ", yesterday's rhythm:     " + with);
            gained += with.mean() - without.mean();
        }

        assertThat(gained).isPositive();
    }

    @Test
    void shouldSayWhatADrillGainsOnAFirstEvening() {
        double gained = 0;
        for (CuberStyle style : CuberStyle.characters()) {
            List<Performed> evening = Performed.evening(style, SEED, FIRST_EVENING);
            Told without = Told.of(evening, new InferredHands(OwnTimes.NONE), Rhythm.coldStart());
            Told with = Told.of(evening, new InferredHands(InferredHands.drill(style)), Rhythm.coldStart());
            System.out.println(style.name() + ", no drill: " + without);
            System.out.println(style.name() + ", a drill:  " + with);
            gained += with.mean() - without.mean();
        }

        assertThat(gained).isPositive();
    }

    private static Rhythm rhythmOf(List<Performed> night, InferredHands hands) {
        List<PracticedSolve> practiced = new ArrayList<>();
        for (Performed solve : night) {
            practiced.add(new PracticedSolve(solve.record(), hands.of(solve, Rhythm.coldStart()), practiced.size()));
        }
        return RestReader.learn(practiced, Rhythm.coldStart());
    }
}
