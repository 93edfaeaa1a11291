package fermata.analysis.rest;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.event.OwnTimes;
import fermata.analysis.event.OwnTimes.Taken;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.rehearsal.CuberStyle;
import fermata.analysis.rehearsal.Pauses;
import fermata.decoder.cube.Face;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class RotationEvidenceTest {
    /** Of rehearsed solves by one who turns the cube slowly: made up, so this proves the machinery. */
    @Test
    void shouldTellRotationsBetterWithTheTimesOfADrill() {
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
        CuberStyle style = new CuberStyle("slow", cook.hand(), cook.habits(), cook.pace(), slow);
        List<Performed> solves = Performed.evening(style, 5, 30);
        long fluent = Math.round(style.pace().adjacentMicros());
        OwnTimes drill = new OwnTimes(new Taken(90, fluent), Taken.NEVER, new Taken(16, fluent + 900_000), Taken.NEVER);

        double without = logScore(solves, RestSnapshot.coldStart());
        double with = logScore(solves, RestSnapshot.coldStart().informed(drill));

        assertThat(with).as("%.4f with, %.4f without", with, without).isGreaterThan(without + 0.002);
    }

    /** The mean natural logarithm of what a rotation or none was given, by the evidence and the share of rotations. */
    private static double logScore(List<Performed> solves, RestSnapshot rhythm) {
        List<Double> ratios = new ArrayList<>();
        List<Boolean> truth = new ArrayList<>();
        for (Performed solve : solves) {
            RotationEvidence evidence =
                    RotationEvidence.of(solve.record(), solve.facts().hand(), rhythm);
            for (int turn = 1; turn < solve.turns().size(); turn++) {
                ratios.add(evidence.ofRotation(turn, ANY));
                truth.add(solve.facts().turns().get(turn).rotationProbability() > 0.5);
            }
        }
        double share = (double) Collections.frequency(truth, true) / truth.size();
        double sum = 0;
        for (int turn = 0; turn < truth.size(); turn++) {
            double odds = Math.exp(ratios.get(turn)) * share / (1 - share);
            sum += Math.log((truth.get(turn) ? odds : 1) / (1 + odds));
        }
        return sum / truth.size();
    }

    @Test
    void shouldChangeNothingWithoutADrill() {
        assertThat(RestSnapshot.coldStart().informed(OwnTimes.NONE)).isEqualTo(RestSnapshot.coldStart());
    }

    private static final Orientation ANY = Orientation.turning(Face.U, 1);

    @Test
    void shouldSpeakForRotationsWhereTheyWereAndAgainstThemElsewhere() {
        List<Performed> solves = Performed.evening(CuberStyle.cook(), 3, 30);
        RestSnapshot yesterday = RestReader.learn(RestScore.practiced(solves, false), Rhythm.coldStart())
                .beats();
        double with = 0;
        int rotations = 0;
        double without = 0;
        int others = 0;
        for (Performed solve : solves) {
            SolveRecord record = solve.record();
            RotationEvidence evidence =
                    RotationEvidence.of(record, solve.facts().hand(), yesterday);
            for (int turn = 1; turn < solve.turns().size(); turn++) {
                boolean isRotated = solve.facts().turns().get(turn).rotationProbability() > 0.5;
                with += isRotated ? evidence.ofRotation(turn, ANY) : 0;
                rotations += isRotated ? 1 : 0;
                without += isRotated ? 0 : evidence.ofRotation(turn, ANY);
                others += isRotated ? 0 : 1;
            }
        }

        assertThat(rotations).isGreaterThan(20);
        assertThat(with / rotations).isGreaterThan(0.5);
        assertThat(without / others).isLessThan(-0.5);
    }
}
