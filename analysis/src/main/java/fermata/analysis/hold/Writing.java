package fermata.analysis.hold;

import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Move;
import fermata.decoder.notation.Slice;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Writes a track as moves: changes of hold that fit the turn before are wide turns and slices, the rest rotations. */
public final class Writing {
    private Writing() {}

    /**
     * Writes a track of whose times nothing is known.
     *
     * @param sure for each turn how likely its hold is right
     * @param rotated for each turn how likely a rotation stands before it
     * @param logScore logarithm of how likely all readings together are
     */
    public static HoldReading of(
            HoldTrack track, double[] sure, LayerOdds odds, List<Double> rotated, double logScore) {
        return of(track, sure, odds, rotated, logScore, HoldEvidence.NONE);
    }

    /**
     * Writes a track. Two turns that cannot be one move are written as two, the second as a wide one.
     *
     * @param evidence as it was asked with; other parameters as above
     */
    public static HoldReading of(
            HoldTrack track,
            double[] sure,
            LayerOdds odds,
            List<Double> rotated,
            double logScore,
            HoldEvidence evidence) {
        List<HandTurn> turns = new ArrayList<>();
        List<InferredRotation> rotations = new ArrayList<>();
        for (int turn = 0; turn < track.size(); turn++) {
            Orientation hold = track.holds().get(turn);
            Turn seen = hold.toHand(track.turns().get(turn));
            RotationReading reading = readingAfter(track, turn, evidence);
            Move move = new Move.Layer(seen);
            if (reading == RotationReading.WIDE) {
                move = new Move.Wide(seen.face().opposite(), seen.quarters());
            } else if (reading == RotationReading.SLICE) {
                move = slice(seen.face(), 4 - seen.quarters());
                turns.set(turn - 1, new HandTurn(turn - 1, move, hold, sure[turn - 1]));
            } else if (reading != null) {
                rotations.add(new InferredRotation(turn + 1, track.rotationBefore(turn + 1), sure[turn]));
            }
            turns.add(new HandTurn(turn, move, hold, sure[turn]));
        }
        return new HoldReading(turns, rotations, track, odds, rotated, logScore);
    }

    /** The track in the hand's notation. */
    public static String text(HoldTrack track) {
        HoldReading reading = of(
                track, new double[track.size()], LayerOdds.certain(track), Collections.nCopies(track.size(), 0.0), 0);
        StringBuilder text = new StringBuilder(track.holds().get(0).word());
        for (int turn = 0; turn < track.size(); turn++) {
            Move move = reading.turns().get(turn).move();
            boolean secondHalf = move instanceof Move.SliceTurn
                    && turn > 0
                    && reading.turns().get(turn - 1).move() == move;
            if (!secondHalf) {
                text.append(text.isEmpty() ? "" : " ").append(move.written());
            }
            int next = turn + 1;
            reading.rotations().stream()
                    .filter(one -> one.beforeTurn() == next)
                    .forEach(one -> text.append(' ').append(one.rotation().word()));
        }
        return text.toString();
    }

    private static RotationReading readingAfter(HoldTrack track, int turn, HoldEvidence evidence) {
        if (turn + 1 >= track.size() || track.rotationBefore(turn + 1) == Orientation.IDENTITY) {
            return null;
        }
        Orientation hold = track.holds().get(turn);
        boolean mayBeSlice = turn > 0 && track.holds().get(turn - 1) == hold && evidence.mayBeOneMove(turn);
        return RotationReading.of(
                track.rotationBefore(turn + 1),
                mayBeSlice ? hold.toHand(track.turns().get(turn - 1)) : null,
                hold.toHand(track.turns().get(turn)),
                track.holds().get(turn + 1).toHand(track.turns().get(turn + 1)));
    }

    /** The slice whose second half is this face turning {@code -quarters}. */
    private static Move slice(Face second, int quarters) {
        for (Slice slice : Slice.values()) {
            if (slice.follows() == second) {
                return new Move.SliceTurn(slice, quarters);
            }
            if (slice.follows() == second.opposite()) {
                return new Move.SliceTurn(slice, 4 - quarters);
            }
        }
        throw new IllegalStateException("no slice lies beside " + second);
    }
}
