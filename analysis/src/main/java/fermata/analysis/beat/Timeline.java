package fermata.analysis.beat;

import fermata.analysis.record.Segment;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.record.StageRecord;
import fermata.analysis.record.TurnRecord;
import fermata.analysis.regrip.RegripReading;
import fermata.decoder.cube.Face;
import fermata.decoder.notation.Move;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** A solve laid out turn by turn: which stretch each turn belongs to, where stages begin, what the hand needed. */
public final class Timeline {
    private final SolveRecord solve;
    private final HandFacts facts;
    private final Stretch[] stretches;
    private final Set<Integer> starts = new HashSet<>();
    private final List<Double> regrips;
    private final List<TurnSpan> spans;
    private final BitSet withinSlip = new BitSet();
    private final BitSet afterSlip = new BitSet();

    private Timeline(SolveRecord solve, HandFacts facts, List<Double> regrips) {
        this.solve = solve;
        this.facts = facts;
        this.stretches = new Stretch[solve.turns().size()];
        Arrays.fill(stretches, Stretch.UNTOLD);
        solve.stages().forEach(this::lay);
        this.regrips = regrips;
        this.spans = TurnSpans.find(solve.turns(), starts);
        spans.stream().filter(span -> span.kind() == TurnSpan.Kind.SLIP).forEach(slip -> {
            withinSlip.set(slip.turns().from() + 1, slip.turns().to());
            afterSlip.set(slip.turns().to());
        });
    }

    public static Timeline of(PracticedSolve solve) {
        return of(solve.record(), solve.hand(), solve.regrips());
    }

    /** As where nothing can be said of regrips. */
    public static Timeline withoutRegrips(SolveRecord solve, HandFacts facts) {
        return of(solve, facts, List.of());
    }

    private static Timeline of(SolveRecord solve, HandFacts facts, List<Double> regrips) {
        if (facts.turns().size() != solve.turns().size()) {
            throw new IllegalArgumentException(
                    "solve " + solve.id() + " has " + solve.turns().size() + " turns, but the hand's facts are about "
                            + facts.turns().size());
        }
        return new Timeline(solve, facts, regrips);
    }

    /** By turn, how likely the hand took hold anew before it, as the turns alone say. Empty if untold. */
    static List<Double> regrips(SolveRecord solve, HandFacts facts) {
        if (!facts.isRead()) {
            return List.of();
        }
        List<Double> noTimes = Collections.nCopies(solve.turns().size(), 0.0);
        return facts.heard(withoutRegrips(solve, facts).starts(), noTimes).regripsByTurn(facts.hand()).stream()
                .map(RegripReading.AtTurn::probability)
                .toList();
    }

    private void lay(StageRecord stage) {
        Stretch stretch = Stretch.of(stage.name());
        for (int turn = stage.span().from(); turn < stage.span().to(); turn++) {
            stretches[turn] = stretch;
        }
        if (!stage.span().isEmpty() && stretch != Stretch.OPENING) {
            starts.add(stage.span().from());
        }
        // A second look at the last layer begins with recognising, like the first; parts of a cross are one plan.
        if (stretch.isRecognised()) {
            stage.parts().stream()
                    .filter(part -> !part.span().isEmpty())
                    .forEach(part -> starts.add(part.span().from()));
        }
    }

    /** Every interval that is known, in order: not those across a gap, nor without a clock. */
    public List<Beat> beats(int solveOfNight) {
        List<Beat> beats = new ArrayList<>();
        List<TurnRecord> turns = solve.turns();
        Set<Integer> broken = new HashSet<>();
        solve.attempt().gaps().stream().map(Segment.GapRecord::beforeTurn).forEach(broken::add);
        for (int turn = 1; turn < turns.size(); turn++) {
            if (turns.get(turn).isTimed() && turns.get(turn - 1).isTimed() && !broken.contains(turn)) {
                long micros = turns.get(turn).atMicros() - turns.get(turn - 1).atMicros();
                beats.add(new Beat(turn - 1, Math.max(0, micros), context(turn), place(turn), solveOfNight));
            }
        }
        return beats;
    }

    public Stretch stretch(int turn) {
        return stretches[turn];
    }

    public boolean isStart(int turn) {
        return starts.contains(turn);
    }

    public List<TurnSpan> spans() {
        return spans;
    }

    /** Whether the turn before belongs to the same slip. */
    public boolean isSlip(int turn) {
        return withinSlip.get(turn);
    }

    /** Whether a slip ended just before the turn. */
    public boolean isAfterSlip(int turn) {
        return afterSlip.get(turn);
    }

    /** Whether a face lies across from the cross; if there is none, any face may be the last layer's. */
    public boolean isLastLayerFace(Face face) {
        return solve.crossFaces().isEmpty() || solve.crossFaces().get(0).opposite() == face;
    }

    /** Whether anything can be said of regrips: holds are known, and which hand. */
    public boolean tellsRegrips() {
        return !regrips.isEmpty();
    }

    public double regripProbability(int turn) {
        return regrips.get(turn);
    }

    public Set<Integer> starts() {
        return Set.copyOf(starts);
    }

    public double rotationProbability(int turn) {
        return facts.turns().get(turn).rotationProbability();
    }

    public boolean hasHolds() {
        return facts.isRead();
    }

    private Context context(int turn) {
        if (facts.isRead() && facts.turns().get(turn - 1).move() instanceof Move.Wide) {
            return Context.AFTER_WIDE;
        }
        boolean isKnown = stretches[turn].isKnown() && !starts.contains(turn);
        return Context.of(
                solve.turns().get(turn - 1).core(), solve.turns().get(turn).core(), isKnown);
    }

    private Place place(int turn) {
        boolean isRotated = facts.isRead() && rotationProbability(turn) >= 0.5;
        HoldUp holdUp;
        if (!starts.contains(turn) || stretches[turn] == Stretch.UNTOLD) {
            boolean isRegripped = tellsRegrips() && regripProbability(turn) >= 0.5;
            HoldUp still = isSlip(turn) ? HoldUp.SLIP : isRegripped ? HoldUp.REGRIP : HoldUp.INSIDE;
            holdUp = isRotated ? HoldUp.ROTATION : still;
        } else if (stretches[turn].isSought()) {
            holdUp = isRotated ? HoldUp.PAIR_ROTATION : HoldUp.PAIR;
        } else {
            holdUp = isRotated ? HoldUp.CASE_ROTATION : HoldUp.CASE;
        }
        return new Place(stretches[turn], holdUp);
    }
}
