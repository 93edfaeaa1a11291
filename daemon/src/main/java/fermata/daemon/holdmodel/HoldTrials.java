package fermata.daemon.holdmodel;

import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.hold.HoldExample;
import fermata.analysis.hold.HoldQuestion;
import fermata.analysis.hold.assessment.CrossValidation;
import fermata.analysis.hold.assessment.HoldAssessment;
import fermata.analysis.hold.assessment.Share;
import fermata.analysis.hold.assessment.SolveScore;
import fermata.analysis.hold.lattice.HoldModel;
import fermata.analysis.hold.lattice.NeverRotates;
import fermata.analysis.hold.learning.HoldTrainer;
import fermata.analysis.hold.sequence.SequenceBook;
import fermata.daemon.json.AssessmentView;
import fermata.daemon.json.AssessmentView.Figures;
import fermata.daemon.json.AssessmentView.Part;
import fermata.daemon.turnfile.WrittenSolve;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/** Holds inferred holds against written ones, in all and per method and hand. Deterministic. */
public final class HoldTrials {
    /** Resampling for the intervals begins from it. */
    private static final long SEED = 20_261_124;

    private final String file;
    private final List<WrittenSolve> solves;
    private final int walkthroughs;

    /**
     * Over the solves of a file; walkthroughs are no solves as a hand did them and are left out.
     *
     * @param file as the user named it
     */
    public HoldTrials(String file, List<WrittenSolve> written) {
        this.file = file;
        this.solves = written.stream().filter(solve -> !solve.walkthrough()).toList();
        this.walkthroughs = written.size() - solves.size();
    }

    /** The examples that are left. */
    public List<HoldExample> examples() {
        return solves.stream().map(WrittenSolve::example).toList();
    }

    /** By the model that comes along. Cost: some 15 ms a solve. */
    public AssessmentView withShipped() {
        return view(
                "the model that comes along, " + HoldFiles.modelId(),
                new Readers(scores(HoldModel.shipped()), never(), scores(HoldModel.markov())));
    }

    /**
     * By models that were learned from the other groups, fold after fold. Cost: two runs of learning for each fold.
     *
     * @param common sequences that are known beforehand
     * @param progress told what is being done
     */
    public AssessmentView crossValidated(int folds, SequenceBook common, Consumer<String> progress) {
        List<HoldExample> examples = examples();
        int groups = (int) examples.stream().map(HoldExample::group).distinct().count();
        if (groups < 2) {
            throw new IllegalArgumentException("all its solves are of one group, so there are no others to learn from");
        }
        int dealt = Math.min(folds, groups);
        progress.accept("learning " + dealt + " times from the solves of other groups");
        List<SolveScore> model = CrossValidation.scores(examples, common, HoldTrainer.Settings.USUAL, dealt);
        progress.accept("the same with a Markov model, to compare");
        List<SolveScore> markov =
                CrossValidation.scores(examples, SequenceBook.EMPTY, HoldTrainer.Settings.MARKOV, dealt);
        return view("the other groups of the file, in " + dealt + " folds", new Readers(model, never(), markov));
    }

    /** Scores by solve, of three readers. */
    private record Readers(List<SolveScore> model, List<SolveScore> never, List<SolveScore> markov) {}

    private List<SolveScore> scores(HoldModel model) {
        return solves.stream()
                .map(solve -> CrossValidation.score(model, solve.example()))
                .toList();
    }

    private List<SolveScore> never() {
        return examples().stream()
                .map(example -> SolveScore.of(
                        example.track(),
                        NeverRotates.infer(new HoldQuestion(
                                example.track().turns(), example.start(), example.hand(), HoldEvidence.NONE))))
                .toList();
    }

    private AssessmentView view(String learnedFrom, Readers readers) {
        List<Part> printed = new ArrayList<>();
        solves.stream().map(WrittenSolve::method).distinct().sorted().forEach(method -> {
            printed.add(part(method, "all", readers, solve -> solve.method().equals(method)));
            for (String hands : List.of("one", "two", "unknown")) {
                Predicate<WrittenSolve> wanted =
                        solve -> solve.method().equals(method) && solve.hands().equals(hands);
                if (solves.stream().anyMatch(wanted)) {
                    printed.add(part(method, hands, readers, wanted));
                }
            }
        });
        return new AssessmentView(
                file, learnedFrom, walkthroughs, part("all", "all", readers, solve -> true), hands(readers), printed);
    }

    private List<Part> hands(Readers readers) {
        return solves.stream()
                .map(WrittenSolve::hands)
                .distinct()
                .sorted()
                .map(hands -> part("all", hands, readers, solve -> solve.hands().equals(hands)))
                .toList();
    }

    private Part part(String method, String hands, Readers readers, Predicate<WrittenSolve> wanted) {
        List<Integer> some = IntStream.range(0, solves.size())
                .filter(place -> wanted.test(solves.get(place)))
                .boxed()
                .toList();
        return new Part(
                method,
                hands,
                figures(some, readers.model(), true),
                figures(some, readers.never(), false),
                figures(some, readers.markov(), true));
    }

    private static Figures figures(List<Integer> some, List<SolveScore> scores, boolean hasOdds) {
        HoldAssessment found = HoldAssessment.of(some.stream().map(scores::get).toList(), SEED);
        return new Figures(
                found.solves(),
                found.turns(),
                found.holdShare().value(),
                interval(found.holdShare()),
                found.layerShare().value(),
                interval(found.layerShare()),
                new AssessmentView.Rotations(
                        found.rotations().truth(),
                        found.rotations().found(),
                        found.rotations().hit(),
                        found.rotations().precision().value(),
                        interval(found.rotations().precision()),
                        found.rotations().recall().value(),
                        interval(found.rotations().recall()),
                        found.rotations().f1().value(),
                        interval(found.rotations().f1())),
                found.solvesAllRight(),
                hasOdds ? found.logScore() : null,
                hasOdds ? found.calibrationError() : null,
                !hasOdds
                        ? List.of()
                        : found.reliability().stream()
                                .map(bin -> new AssessmentView.Bin(
                                        bin.from(), bin.to(), bin.turns(), bin.right(), bin.stated()))
                                .toList());
    }

    private static List<Double> interval(Share share) {
        return List.of(share.low(), share.high());
    }
}
