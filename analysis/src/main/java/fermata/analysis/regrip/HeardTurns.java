package fermata.analysis.regrip;

import fermata.analysis.event.Hand;
import fermata.analysis.hand.TurnOdds;
import fermata.decoder.notation.Move;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;

/**
 * The turns of a solve as they were heard, for a reading of regrips by heard turn: the two quarters of a half turn, and
 * the two faces of a slice, are one move of the hand.
 *
 * @param moves by heard turn, what the hand made; a slice stands on each of its turns
 * @param odds by heard turn
 * @param starts turns at which a stage begins
 * @param evidence by heard turn, {@link GripTurn#evidence()}
 */
public record HeardTurns(List<Move> moves, List<TurnOdds> odds, Set<Integer> starts, List<Double> evidence) {
    public HeardTurns {
        moves = List.copyOf(moves);
        odds = List.copyOf(odds);
        starts = Set.copyOf(starts);
        evidence = List.copyOf(evidence);
        if (odds.size() != moves.size() || evidence.size() != moves.size()) {
            throw new IllegalArgumentException(
                    moves.size() + " moves, odds of " + odds.size() + ", evidence of " + evidence.size());
        }
    }

    /**
     * Reads them: a probability stands before the first turn of a move, 0 before its second. Cost: that of
     * {@link Regrips}.
     */
    public RegripReading regrips(Hand hand) {
        Objects.requireNonNull(hand, "hand");
        RegripReading reading = Regrips.read(hand, moved());
        return new RegripReading(heard(reading.turns()), reading.expected(), reading.count());
    }

    /** The turns of {@link #regrips}, without the count of all, which costs as much again. */
    public List<RegripReading.AtTurn> regripsByTurn(Hand hand) {
        Objects.requireNonNull(hand, "hand");
        return heard(Regrips.readTurns(hand, moved()));
    }

    private List<GripTurn> moved() {
        List<GripTurn> turns = new ArrayList<>();
        for (int turn = 0; turn < moves.size(); turn += length(turn)) {
            turns.add(turn(turn, length(turn)));
        }
        return turns;
    }

    /** By move to by heard turn; empty if nothing can be said. */
    private List<RegripReading.AtTurn> heard(List<RegripReading.AtTurn> byMove) {
        List<RegripReading.AtTurn> heard = new ArrayList<>();
        for (RegripReading.AtTurn at : byMove) {
            boolean isTwo = length(heard.size()) == 2;
            heard.add(at);
            if (isTwo) {
                heard.add(new RegripReading.AtTurn(0, at.fingers()));
            }
        }
        return heard;
    }

    private int length(int turn) {
        return isOneMove(turn) ? 2 : 1;
    }

    private boolean isOneMove(int turn) {
        int next = turn + 1;
        return next < moves.size()
                && moves.get(next).equals(moves.get(turn))
                && (moves.get(turn) instanceof Move.SliceTurn || moves.get(turn).quarters() != 2)
                && odds.get(next).rotated() < 0.5
                && !starts.contains(next);
    }

    private GripTurn turn(int turn, int length) {
        Move move = moves.get(turn);
        int sense = move.quarters() == 3 ? -1 : move.quarters();
        List<Integer> quarters;
        if (move instanceof Move.SliceTurn) {
            quarters = List.of(sense);
        } else if (length == 2) {
            quarters = List.of(2 * sense);
        } else {
            quarters = sense == 2 ? List.of(2, -2) : List.of(sense);
        }
        return new GripTurn(
                move,
                quarters,
                odds.get(turn).layers(),
                odds.get(turn).rotated(),
                starts.contains(turn),
                evidence.get(turn));
    }
}
