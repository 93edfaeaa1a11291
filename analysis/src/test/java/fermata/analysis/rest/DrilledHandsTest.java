package fermata.analysis.rest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fermata.analysis.beat.HandFacts;
import fermata.analysis.beat.HoldUp;
import fermata.analysis.event.OwnTimes;
import fermata.analysis.rhythm.RestSnapshot;
import fermata.rehearsal.character.CuberStyle;
import fermata.rehearsal.character.Pauses;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a drill does to a first evening. Rehearsed, so it proves the machinery and not the world. */
class DrilledHandsTest {
    /** The cook, but turning the cube as a whole takes 0.9 s. */
    private static CuberStyle slowToRotate() {
        CuberStyle cook = CuberStyle.cook();
        Pauses usual = cook.pauses();
        Pauses slow = new Pauses(
                usual.lookAheadProbability(),
                usual.lookAheadMicros(),
                usual.orientMicros(),
                usual.permuteMicros(),
                900_000,
                usual.regripMicros(),
                usual.spread());
        return new CuberStyle("slow", cook.hand(), cook.habits(), cook.pace(), slow);
    }

    @Test
    void shouldTellRotationsBetterWithTheTimesOfADrill() {
        CuberStyle style = slowToRotate();
        List<Performed> solves = Performed.evening(style, 5, 30);

        double without = logScore(solves, OwnTimes.NONE);
        double with = logScore(solves, InferredHands.drill(style));

        assertThat(with).as("%.4f with, %.4f without", with, without).isGreaterThan(without + 0.002);
    }

    /** The mean natural logarithm of what a rotation or none, whichever it was, was given. */
    private static double logScore(List<Performed> solves, OwnTimes own) {
        InferredHands hands = new InferredHands(own);
        double sum = 0;
        int turns = 0;
        for (Performed solve : solves) {
            HandFacts facts = hands.of(solve, Rhythm.coldStart());
            for (int turn = 1; turn < solve.turns().size(); turn++) {
                boolean isRotated = solve.facts().turns().get(turn).rotationProbability() > 0.5;
                double given = facts.turns().get(turn).rotationProbability();
                sum += Math.log(Math.max(1e-9, isRotated ? given : 1 - given));
                turns++;
            }
        }
        return sum / turns;
    }

    @Test
    void shouldDrawTheShiftsOfTheColdStartTowardsTheDrillAndLeaveTheRestAlone() {
        RestSnapshot cold = RestSnapshot.coldStart();
        OwnTimes drill = InferredHands.drill(slowToRotate());

        RestSnapshot informed = cold.informed(drill);

        double rotation = informed.holdUps().get(HoldUp.ROTATION.ordinal()).mu();
        double usual = cold.holdUps().get(HoldUp.ROTATION.ordinal()).mu();
        assertThat(rotation)
                .isCloseTo(drill.rotationLogAbove(usual), within(1e-12))
                .isGreaterThan(usual);
        assertThat(informed.holdUps().get(HoldUp.PAIR_ROTATION.ordinal()))
                .isEqualTo(cold.holdUps().get(HoldUp.PAIR_ROTATION.ordinal()));
        assertThat(informed.levels()).isEqualTo(cold.levels());
        assertThat(cold.informed(OwnTimes.NONE)).isEqualTo(cold);
    }

    @Test
    void shouldLeaveALearnedRhythmAsItIs() {
        CuberStyle style = slowToRotate();
        RestSnapshot learned = RestReader.learn(
                        RestScore.practiced(Performed.evening(style, 6, 5), true), Rhythm.coldStart())
                .beats();

        assertThat(learned.informed(InferredHands.drill(style))).isEqualTo(learned);
    }
}
