package fermata.analysis.hand;

import fermata.analysis.event.OwnTimes;
import fermata.analysis.hold.GuessedExample;
import fermata.analysis.hold.HandTurn;
import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.hold.HoldExample;
import fermata.analysis.hold.HoldQuestion;
import fermata.analysis.hold.HoldReading;
import fermata.analysis.hold.HoldTrack;
import fermata.analysis.hold.InferredRotation;
import fermata.analysis.hold.IntervalEvidence;
import fermata.analysis.hold.LayerOdds;
import fermata.analysis.hold.SliceTimes;
import fermata.analysis.hold.lattice.HoldInference;
import fermata.analysis.hold.lattice.HoldModel;
import fermata.analysis.hold.learning.HoldHabits;
import fermata.analysis.hold.sequence.SequenceBook;
import fermata.analysis.hold.sequence.SequenceReading;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.record.TurnRecord;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Infers what the hand did in recorded solves. Immutable, thread-safe. Cost: that of {@link HoldInference}, linear in
 * turns.
 */
public final class HandReader {
    /** Longer attempts have no reading: a board has no memory for it, and nobody solves a cube in as many turns. */
    public static final int MOST_TURNS = 1000;

    /** From here on a reading is learned from as if it were said. */
    private static final double SURE = 0.9;

    private final HoldInference inference;
    private final OwnTimes own;
    private final SequenceBook sequences;

    public HandReader(HoldInference inference) {
        this(inference, OwnTimes.NONE, SequenceBook.EMPTY);
    }

    private HandReader(HoldInference inference, OwnTimes own, SequenceBook sequences) {
        this.inference = Objects.requireNonNull(inference, "inference");
        this.own = Objects.requireNonNull(own, "own");
        this.sequences = Objects.requireNonNull(sequences, "sequences");
    }

    /** The same for a solver of whom last-layer sequences are known, as the solver's hand turns them. */
    public HandReader knowing(SequenceBook solver) {
        return new HandReader(inference, own, solver);
    }

    /** The same for a solver who has calibrated: heard where no rhythm is known, for a rhythm speaks for itself. */
    public HandReader timed(OwnTimes solver) {
        return new HandReader(inference, solver, sequences);
    }

    /**
     * Reads a solve. With turns lost in it there is no telling what the others were part of: then there is no reading.
     * Neither is there one of more than {@value #MOST_TURNS} turns.
     *
     * @param habits what the solver's corrections taught
     * @param rhythm what the solver's own rhythm says of the times between heard turns, from a day before this one;
     *     {@link HoldEvidence#NONE} if it is not known: then the solve's own median speaks, as it does once corrections
     *     taught how long what takes
     */
    public Optional<HandReading> read(SolveRecord solve, HoldHabits habits, HoldEvidence rhythm) {
        return read(solve, habits, rhythm, SensedOrientations.NONE);
    }

    /**
     * Reads a solve whose cube told how it lay.
     *
     * @param habits what the solver's corrections taught
     * @param rhythm as above
     * @param sensed what the capture's motion sensor told
     */
    public Optional<HandReading> read(
            SolveRecord solve, HoldHabits habits, HoldEvidence rhythm, SensedOrientations sensed) {
        if (!solve.attempt().gaps().isEmpty() || solve.turns().size() > MOST_TURNS) {
            return Optional.empty();
        }
        HalfTurns merged =
                HalfTurns.of(solve.turns().stream().map(TurnRecord::core).toList());
        HoldEvidence evidence = evidence(solve, merged, times(solve, merged, habits, rhythm), sensed);
        HoldReading reading = inference
                .with(habits::join)
                .infer(new HoldQuestion(
                        merged.turns(),
                        solve.attempt().scramble().start(),
                        solve.attempt().origin().hand(),
                        evidence));
        return Optional.of(heard(merged, reading));
    }

    /**
     * A solve of which the solver said what the hand did, to learn {@link HoldHabits} from.
     *
     * @param said what was said of its turns
     */
    public static HoldExample example(SolveRecord solve, HandReading said) {
        HalfTurns merged =
                HalfTurns.of(solve.turns().stream().map(TurnRecord::core).toList());
        List<Orientation> holds = merged.firsts().stream()
                .map(first -> said.turns().get(first).hold())
                .toList();
        return new HoldExample(
                solve.attempt().scramble().start(),
                new HoldTrack(merged.turns(), holds),
                solve.attempt().origin().hand(),
                solve.id(),
                solve.turns().get(0).isTimed()
                        ? Arrays.stream(intervals(solve.turns(), merged))
                                .boxed()
                                .toList()
                        : List.of());
    }

    /**
     * Learns from the solves that a solver set right, and from others that this reads by what those teach.
     *
     * @param everybody the model that this reader infers by
     * @param corrected oldest first; if there is none, nothing is learned
     * @param others solves of the same solver that nobody set right
     */
    public HoldHabits learn(HoldModel everybody, List<HoldExample> corrected, List<SolveRecord> others) {
        HoldHabits said = HoldHabits.learn(everybody, corrected);
        if (said.isNone() || others.isEmpty()) {
            return said;
        }
        List<GuessedExample> guessed = others.stream()
                .flatMap(solve -> read(solve, said, HoldEvidence.NONE).map(reading -> guess(solve, reading)).stream())
                .toList();
        return HoldHabits.learn(everybody, corrected, guessed);
    }

    private static GuessedExample guess(SolveRecord solve, HandReading reading) {
        List<Boolean> sure = HalfTurns.of(
                        solve.turns().stream().map(TurnRecord::core).toList())
                .firsts()
                .stream()
                .map(first -> reading.turns().get(first).probability() >= SURE)
                .toList();
        return new GuessedExample(example(solve, reading), sure);
    }

    /** How the last-layer sequences of a solve that ended solved were read. */
    public static List<SequenceReading> sequences(SolveRecord solve, HandReading reading) {
        HoldExample read = example(solve, reading);
        List<Double> sure = HalfTurns.of(
                        solve.turns().stream().map(TurnRecord::core).toList())
                .firsts()
                .stream()
                .map(first -> reading.turns().get(first).probability())
                .toList();
        return SequenceReading.of(read.start(), read.track(), sure);
    }

    private HoldEvidence evidence(SolveRecord solve, HalfTurns merged, HoldEvidence times, SensedOrientations sensed) {
        List<HoldEvidence> known = new ArrayList<>();
        known.add(sequences.evidence(solve.attempt().scramble().start(), merged.turns()));
        known.add(times);
        if (solve.turns().get(0).isTimed()) {
            known.add(new SliceTimes(intervals(solve.turns(), merged)));
            known.add(sensed.evidence(merged.turns(), times(solve, merged)));
        }
        return HoldEvidence.all(known);
    }

    /** What corrections taught of times was learned beside the solve's own median, so that speaks with it. */
    private HoldEvidence times(SolveRecord solve, HalfTurns merged, HoldHabits habits, HoldEvidence rhythm) {
        boolean isTimed = solve.turns().get(0).isTimed();
        if (isTimed && habits.hearTimes()) {
            return new IntervalEvidence(intervals(solve.turns(), merged));
        } else if (rhythm != HoldEvidence.NONE) {
            return ofMerged(rhythm, merged);
        } else if (isTimed) {
            return new IntervalEvidence(
                    intervals(solve.turns(), merged),
                    Math.max(0, own.rotationMicrosAbove(IntervalEvidence.ROTATION_MICROS)));
        }
        return HoldEvidence.NONE;
    }

    private static HoldEvidence ofMerged(HoldEvidence ofHeard, HalfTurns merged) {
        return new HoldEvidence() {
            @Override
            public double ofRotation(int beforeTurn, Orientation rotation) {
                return ofHeard.ofRotation(merged.firsts().get(beforeTurn), rotation);
            }
        };
    }

    /** When the first heard turn of each was made, on the capture's clock. */
    private static long[] times(SolveRecord solve, HalfTurns merged) {
        return merged.firsts().stream()
                .mapToLong(first ->
                        solve.firstTurnAtMicros() + solve.turns().get(first).atMicros())
                .toArray();
    }

    /** From the last heard turn of the one before to the first of this one; a fitted clock may step back a little. */
    private static long[] intervals(List<TurnRecord> turns, HalfTurns merged) {
        long[] micros = new long[merged.turns().size()];
        for (int turn = 1; turn < micros.length; turn++) {
            int first = merged.firsts().get(turn);
            micros[turn] = Math.max(
                    0, turns.get(first).atMicros() - turns.get(first - 1).atMicros());
        }
        return micros;
    }

    private static HandReading heard(HalfTurns merged, HoldReading reading) {
        List<MadeTurn> turns = new ArrayList<>();
        List<TurnOdds> odds = new ArrayList<>();
        for (HandTurn turn : reading.turns()) {
            int at = turn.coreTurn();
            List<Turn> parts = merged.heard().subList(merged.firsts().get(at), merged.end(at));
            turns.addAll(HalfTurns.parts(parts, turn.move(), turn.hold(), within(turn.probability())));
            List<Double> layers = layers(reading.odds(), at);
            odds.add(new TurnOdds(within(reading.rotated().get(at)), layers));
            // The cube is not turned between the two quarters of what is taken as one turn.
            odds.addAll(Collections.nCopies(parts.size() - 1, new TurnOdds(0, layers)));
        }
        List<InferredRotation> rotations = reading.rotations().stream()
                .map(rotation -> new InferredRotation(
                        merged.firsts().get(rotation.beforeTurn()),
                        rotation.rotation(),
                        within(rotation.probability())))
                .toList();
        return new HandReading(turns, rotations, false, odds);
    }

    private static List<Double> layers(LayerOdds odds, int turn) {
        return Arrays.stream(Face.values()).map(face -> odds.at(turn, face)).toList();
    }

    /** Sums of rounded terms may stand a hair outside. */
    private static double within(double probability) {
        return Math.max(0, Math.min(1, probability));
    }
}
