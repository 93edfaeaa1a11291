package fermata.analysis.hold;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.event.Hand;
import fermata.analysis.hold.assessment.CrossValidation;
import fermata.analysis.hold.assessment.HoldAssessment;
import fermata.analysis.hold.assessment.SolveScore;
import fermata.analysis.hold.lattice.HoldModel;
import fermata.analysis.hold.learning.HoldTrainer;
import fermata.analysis.hold.sequence.SequenceBook;
import fermata.decoder.orientation.Mirror;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What is learned from all solves takes minutes and is a proof (docs/proofs.md). Truth: the public reconstructions. */
class LearnedWeightsTest {
    @Test
    @Tag("proof")
    void shouldReachTheAskedShareOfTwoHandedHoldsWhenGroupsAreKeptApart() {
        List<PublicSolves.Solve> solves = PublicSolves.all();
        List<SolveScore> scores =
                CrossValidation.scores(PublicSolves.examples(), commonSequences(), HoldTrainer.Settings.USUAL, 10);

        HoldAssessment cfop = over(
                solves,
                scores,
                solve -> solve.hands().equals("two") && solve.method().equals("CFOP"));
        assertThat(cfop.holdShare().value()).as("two-handed CFOP").isGreaterThanOrEqualTo(0.80);
    }

    @Test
    void shouldLearnTheSameFromARightHandAsFromALeftOneInTheMirror() {
        HoldTrainer.Settings quick = new HoldTrainer.Settings(1, 12, 0.1, 0.1, 1, 0, false);
        List<HoldExample> left = PublicSolves.examples().subList(0, 3);
        List<HoldExample> right = left.stream()
                .map(one -> new HoldExample(Mirror.of(one.start()), one.track().mirrored(), Hand.RIGHT, one.group()))
                .toList();

        assertThat(HoldTrainer.learn(right, SequenceBook.EMPTY, quick).weights().print())
                .isEqualTo(HoldTrainer.learn(left, SequenceBook.EMPTY, quick)
                        .weights()
                        .print())
                .contains("one_hand_edges_first ");
    }

    /** Readings of what was learned from: no measure of skill, but of whether the shipped files are read as meant. */
    @Test
    void shouldReadMostOfWhatItLearnedFromWhenWithTheShippedModel() {
        List<PublicSolves.Solve> solves = PublicSolves.all().subList(0, 12);
        List<SolveScore> scores = solves.stream()
                .map(solve -> CrossValidation.score(HoldModel.shipped(), solve.example()))
                .toList();

        assertThat(HoldAssessment.of(scores, 1).holdShare().value()).isGreaterThan(0.9);
    }

    private static HoldAssessment over(
            List<PublicSolves.Solve> solves, List<SolveScore> scores, Predicate<PublicSolves.Solve> which) {
        return HoldAssessment.of(
                IntStream.range(0, solves.size())
                        .filter(place -> which.test(solves.get(place)))
                        .mapToObj(scores::get)
                        .toList(),
                1);
    }

    /** The last-layer sequences of the reference tables. */
    static SequenceBook commonSequences() {
        List<String> sequences = new ArrayList<>();
        for (String table : List.of("oll_cases.csv", "pll_cases.csv")) {
            try (var stream = LearnedWeightsTest.class.getResourceAsStream("/fermata/fixtures/reference/" + table)) {
                new String(stream.readAllBytes(), StandardCharsets.UTF_8)
                        .lines()
                        .skip(1)
                        .map(line -> line.split(",")[1])
                        .forEach(sequences::add);
            } catch (IOException problem) {
                throw new java.io.UncheckedIOException(problem);
            }
        }
        return SequenceBook.parse(String.join("\n", sequences));
    }
}
