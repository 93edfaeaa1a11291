package fermata.analysis.hold.assessment;

import fermata.analysis.event.Hand;
import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.hold.HoldExample;
import fermata.analysis.hold.HoldQuestion;
import fermata.analysis.hold.lattice.HoldInference;
import fermata.analysis.hold.lattice.HoldModel;
import fermata.analysis.hold.learning.HoldTrainer;
import fermata.analysis.hold.sequence.SequenceBook;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Assesses learning itself: every solve is read by a model that learned from other groups only. */
public final class CrossValidation {
    private CrossValidation() {}

    /**
     * Scores each example. Groups are dealt to the folds in turn, those with one-handed solves first, so that
     * each fold has its share of the few. Cost: one run of learning a fold.
     *
     * @param folds at least 2
     * @return in the order of the examples
     */
    public static List<SolveScore> scores(
            List<HoldExample> examples, SequenceBook common, HoldTrainer.Settings settings, int folds) {
        if (folds < 2) {
            throw new IllegalArgumentException(folds + " folds leave nothing to learn from; use 2 or more");
        }
        Map<String, Integer> foldOf = deal(examples, folds);
        SolveScore[] scores = new SolveScore[examples.size()];
        for (int fold = 0; fold < folds; fold++) {
            int held = fold;
            List<HoldExample> others = examples.stream()
                    .filter(one -> foldOf.get(one.group()) != held)
                    .toList();
            HoldModel model = HoldTrainer.learn(others, common, settings);
            for (int place = 0; place < scores.length; place++) {
                if (foldOf.get(examples.get(place).group()) == fold) {
                    scores[place] = score(model, examples.get(place));
                }
            }
        }
        return List.of(scores);
    }

    /** Reads one example's turns and holds the reading against its track. */
    public static SolveScore score(HoldModel model, HoldExample example) {
        HoldQuestion question =
                new HoldQuestion(example.track().turns(), example.start(), example.hand(), HoldEvidence.NONE);
        return SolveScore.of(example.track(), new HoldInference(model).infer(question));
    }

    private static Map<String, Integer> deal(List<HoldExample> examples, int folds) {
        List<HoldExample> ordered = new ArrayList<>();
        examples.stream().filter(one -> one.hand() != Hand.TWO).forEach(ordered::add);
        examples.stream().filter(one -> one.hand() == Hand.TWO).forEach(ordered::add);
        Map<String, Integer> foldOf = new HashMap<>();
        for (HoldExample example : ordered) {
            foldOf.putIfAbsent(example.group(), foldOf.size() % folds);
        }
        return foldOf;
    }
}
