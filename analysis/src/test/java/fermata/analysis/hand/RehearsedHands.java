package fermata.analysis.hand;

import fermata.analysis.PracticeAnalysis;
import fermata.analysis.event.CaptureLog;
import fermata.analysis.event.Event;
import fermata.analysis.event.Hand;
import fermata.analysis.event.MarkKind;
import fermata.analysis.event.Origin;
import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.hold.HoldExample;
import fermata.analysis.hold.HoldTrack;
import fermata.analysis.hold.lattice.HoldInference;
import fermata.analysis.hold.lattice.HoldModel;
import fermata.analysis.hold.learning.HoldHabits;
import fermata.analysis.hold.sequence.LearnedSequences;
import fermata.analysis.hold.sequence.SequenceBook;
import fermata.analysis.hold.sequence.SequenceReading;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.record.TurnRecord;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Move;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import fermata.decoder.stream.TurnSource;
import fermata.rehearsal.EveningPlan;
import fermata.rehearsal.MotionSensor;
import fermata.rehearsal.character.CuberStyle;
import fermata.rehearsal.character.SensorStyle;
import fermata.rehearsal.truth.AttemptTruth;
import fermata.rehearsal.truth.Evening;
import fermata.rehearsal.truth.MoveTruth;
import fermata.rehearsal.truth.SolveTruth;
import fermata.rehearsal.truth.StageTruth;
import fermata.rehearsal.truth.TimedOrientation;
import fermata.rehearsal.truth.TimedTurn;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.TreeMap;

/** Rehearsed evenings read by the reader that nights are read by, held against their truth. */
final class RehearsedHands {
    private final Evening evening;
    private final CaptureLog log;
    private final Map<Integer, SolveRecord> recordAt = new HashMap<>();

    /** What came of an evening: turns, those with a right hold, solves, those with every hold right. */
    record Score(int turns, int right, int solves, int allRight) {
        double share() {
            return (double) right / turns;
        }

        Score and(Score other) {
            return new Score(
                    turns + other.turns, right + other.right, solves + other.solves, allRight + other.allRight);
        }

        @Override
        public String toString() {
            return "%.4f of %d turns, %d of %d solves whole".formatted(share(), turns, allRight, solves);
        }
    }

    private RehearsedHands(Evening evening, List<TimedOrientation> samples) {
        this.evening = evening;
        Origin origin = new Origin(
                "galley cube", evening.cuber(), Hand.valueOf(evening.hand().name()));
        this.log = log(evening, samples, origin);
        for (SolveRecord record : PracticeAnalysis.solves(log)) {
            recordAt.put(record.attempt().solve().from(), record);
        }
    }

    /** An evening of so many solves, with times and, where there is a sensor, with orientations. */
    static RehearsedHands of(CuberStyle cuber, long seed, int solves, Optional<SensorStyle> sensor) {
        Evening evening = new fermata.rehearsal.VirtualCuber(cuber, new SplittableRandom(seed))
                .evening(EveningPlan.plain(solves));
        List<TimedOrientation> samples = sensor.map(
                        style -> MotionSensor.of(evening, style, new SplittableRandom(~seed)))
                .orElse(List.of());
        return new RehearsedHands(evening, samples);
    }

    private static CaptureLog log(Evening evening, List<TimedOrientation> samples, Origin origin) {
        Map<Integer, String> announced = new HashMap<>();
        for (AttemptTruth attempt : evening.attempts()) {
            announced.put(attempt.scramble().turns().from(), attempt.scramble().words());
        }
        ArrayDeque<TimedOrientation> pending = new ArrayDeque<>(samples);
        List<Event> events = new ArrayList<>();
        for (int raw = 0; raw < evening.turns().size(); raw++) {
            TimedTurn turn = evening.turns().get(raw);
            while (!pending.isEmpty() && pending.peek().atMicros() <= turn.atMicros()) {
                TimedOrientation sample = pending.remove();
                events.add(new Event.Oriented(sample.attitude(), origin, sample.atMicros()));
            }
            if (announced.containsKey(raw)) {
                events.add(new Event.Mark(MarkKind.SCRAMBLE, announced.get(raw), origin, turn.atMicros()));
            }
            events.add(new Event.Turned(turn.turn(), TurnSource.HEARD, origin, turn.atMicros()));
        }
        return new CaptureLog("evening", events);
    }

    CaptureLog log() {
        return log;
    }

    /** Reads every solve by the shipped model. */
    Score score() {
        return score(new HandReader(new HoldInference(HoldModel.shipped())), HoldHabits.NONE);
    }

    /**
     * The same, by what a solver typed: last-layer sequences, and what the hand did in the last solves of another
     * evening, of which those before were left as they were read.
     */
    Score score(CuberStyle cuber, RehearsedHands other, int corrected) {
        SequenceBook typed = SequenceBook.parse(String.join("\n", cuber.sequences()));
        HandReader reader = new HandReader(new HoldInference(HoldModel.shipped())).knowing(typed);
        List<HoldExample> all = other.typed();
        int left = all.size() - corrected;
        List<SolveRecord> others = other.evening.attempts().subList(0, left).stream()
                .map(attempt -> other.recordAt.get(attempt.solve().turns().from()))
                .toList();
        return score(reader, reader.learn(HoldModel.shipped(), all.subList(left, all.size()), others));
    }

    /** Every solve as its solver would set it right, in words. */
    private List<HoldExample> typed() {
        return evening.attempts().stream().map(this::typed).toList();
    }

    private HoldExample typed(AttemptTruth attempt) {
        SolveRecord record = recordAt.get(attempt.solve().turns().from());
        String words = Orientation.ofLetters(attempt.solve().hold()).word() + " "
                + attempt.solve().sequence();
        List<Turn> core = record.turns().stream().map(TurnRecord::core).toList();
        StatedHand.Agrees agrees = (StatedHand.Agrees) StatedHand.of(Sequence.parse(words), core);
        return HandReader.example(record, agrees.reading());
    }

    /** The last-layer sequences that the evening's solves repeat, as nobody set any of them right. */
    LearnedSequences learned() {
        HandReader reader = new HandReader(new HoldInference(HoldModel.shipped()));
        return LearnedSequences.of(evening.attempts().stream()
                .map(attempt -> {
                    SolveRecord record = recordAt.get(attempt.solve().turns().from());
                    return HandReader.sequences(
                            record,
                            reader.read(record, HoldHabits.NONE, HoldEvidence.NONE)
                                    .orElseThrow());
                })
                .toList());
    }

    /** The last-layer sequences that the evening's solves repeat, as they were really turned. */
    LearnedSequences repeated() {
        return LearnedSequences.of(evening.attempts().stream()
                .map(attempt -> {
                    SolveRecord record = recordAt.get(attempt.solve().turns().from());
                    HoldExample typed = typed(attempt);
                    List<Double> sure = Collections.nCopies(typed.track().size(), 1.0);
                    return SequenceReading.of(record.attempt().scramble().start(), typed.track(), sure);
                })
                .toList());
    }

    /** By stage and in all, every solve read by what another evening's solves repeat. */
    Map<String, Score> scores(LearnedSequences learned) {
        HandReader ignorant = new HandReader(new HoldInference(HoldModel.shipped()));
        HandReader knowing = ignorant.knowing(learned.book());
        Map<String, Score> scores = new TreeMap<>();
        for (AttemptTruth attempt : evening.attempts()) {
            SolveRecord record = recordAt.get(attempt.solve().turns().from());
            HandReading reading =
                    ignorant.read(record, HoldHabits.NONE, HoldEvidence.NONE).orElseThrow();
            if (learned.contradict(HandReader.sequences(record, reading))) {
                reading =
                        knowing.read(record, HoldHabits.NONE, HoldEvidence.NONE).orElseThrow();
            }
            boolean[] right = right(record, attempt.solve(), reading);
            for (StageTruth stage : attempt.solve().stages()) {
                int from = stage.turns().from() - attempt.solve().turns().from();
                int turns = stage.turns().to() - stage.turns().from();
                Score ofStage = score(Arrays.copyOfRange(right, from, from + turns));
                scores.merge(stage.name().replaceAll("[1-4]", "s"), ofStage, Score::and);
            }
            scores.merge("all", score(right), Score::and);
        }
        return scores;
    }

    private Score score(HandReader reader, HoldHabits habits) {
        SensedOrientations sensed = SensedOrientations.of(log);
        Score score = new Score(0, 0, 0, 0);
        for (AttemptTruth attempt : evening.attempts()) {
            SolveRecord record = recordAt.get(attempt.solve().turns().from());
            HandReading reading =
                    reader.read(record, habits, HoldEvidence.NONE, sensed).orElseThrow();
            score = score.and(score(right(record, attempt.solve(), reading)));
        }
        return score;
    }

    private static Score score(boolean[] right) {
        int count = 0;
        for (boolean one : right) {
            count += one ? 1 : 0;
        }
        return new Score(right.length, count, 1, count == right.length ? 1 : 0);
    }

    /** By heard turn, whether its hold is right. */
    private static boolean[] right(SolveRecord record, SolveTruth truth, HandReading reading) {
        List<Turn> core = record.turns().stream().map(TurnRecord::core).toList();
        HoldTrack wanted = new HoldTrack(core, holds(truth));
        HoldTrack read =
                new HoldTrack(core, reading.turns().stream().map(MadeTurn::hold).toList());
        boolean[] right = new boolean[core.size()];
        for (int turn = 0; turn < core.size(); turn++) {
            int partner = HoldTrack.partner(core, turn);
            right[turn] = wanted.layer(turn) == read.layer(turn) && wanted.layer(partner) == read.layer(partner);
        }
        return right;
    }

    /** The hold before each heard turn; both quarters of a half turn count from the hold before it. */
    private static List<Orientation> holds(SolveTruth truth) {
        List<Orientation> holds = new ArrayList<>();
        Orientation hold = Orientation.ofLetters(truth.hold());
        for (MoveTruth made : truth.moves()) {
            for (int turn = made.turns().from(); turn < made.turns().to(); turn++) {
                holds.add(hold);
            }
            Move move = Sequence.parse(made.move()).moves().get(0);
            hold = hold.then(move.rotation());
        }
        return holds;
    }
}
