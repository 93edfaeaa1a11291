package fermata.analysis.hold.sequence;

import fermata.analysis.hold.HoldTrack;
import fermata.analysis.hold.RotationReading;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * How a left hand alone might have made the turns of a two-handed solve: runs of L and U by tilting the cube
 * (z, then the left side is up and the upper side right), lone quarter turns of L while the cross is made by
 * the wide r.
 *
 * <p>There are few one-handed reconstructions to learn from; these made-up ones teach what the hand cannot
 * reach. Common practice, no source. Where a tilt begins varies by chance, from a seed.
 */
public final class Tilting {
    private static final Orientation TILT = Orientation.turning(Face.F, 1);
    private static final int FARTHEST_APART = 4;

    private final StreamFacts facts;
    private final HoldTrack track;
    private final SplittableRandom random;
    private final List<Orientation> holds;

    private Tilting(StreamFacts facts, HoldTrack track, SplittableRandom random) {
        this.facts = facts;
        this.track = track;
        this.random = random;
        this.holds = new ArrayList<>(track.holds());
    }

    /**
     * The turns of the pairs with other holds: held so that the right side turns more often than the left, the
     * left by tilting.
     */
    public static HoldTrack of(StreamFacts facts, HoldTrack track, SplittableRandom random) {
        int from = first(facts, StreamFacts.Phase.PAIRS);
        int to = first(facts, StreamFacts.Phase.ORIENT);
        int rightward = 0;
        for (int turn = from; turn < to; turn++) {
            rightward += track.layer(turn) == Face.R ? 1 : track.layer(turn) == Face.L ? -1 : 0;
        }
        Orientation facing = rightward < 0 ? Orientation.turning(Face.U, 2) : Orientation.IDENTITY;
        List<Orientation> faced =
                track.holds().stream().map(hold -> hold.then(facing)).toList();
        Tilting tilting = new Tilting(facts, new HoldTrack(track.turns(), faced), random);
        tilting.run();
        return new HoldTrack(track.turns().subList(from, to), tilting.holds.subList(from, to));
    }

    /** The first turn of a phase or a later one. */
    public static int first(StreamFacts facts, StreamFacts.Phase phase) {
        int turn = 0;
        while (turn < facts.turns.size() && facts.phase(turn).compareTo(phase) < 0) {
            turn++;
        }
        return turn;
    }

    private void run() {
        int turn = 0;
        while (turn < track.size()) {
            boolean early = facts.phase(turn).compareTo(StreamFacts.Phase.PAIRS) <= 0;
            if (track.layer(turn) != Face.L || !early) {
                turn++;
            } else {
                int last = lastReached(turn);
                boolean cross = facts.phase(turn) == StreamFacts.Phase.CROSS;
                Turn made = track.turns().get(turn);
                if (last == turn && cross && made.quarters() != 2 && random.nextInt(2) == 0) {
                    last = widen(turn);
                } else {
                    tilt(firstReached(turn), last);
                }
                turn = last + 1;
            }
        }
    }

    private boolean sameHold(int one, int other) {
        return track.holds().get(one) == track.holds().get(other);
    }

    /** The last L that the same tilt serves. */
    private int lastReached(int turn) {
        int last = turn;
        for (int next = turn + 1; next < track.size() && next - last <= FARTHEST_APART; next++) {
            Face layer = track.layer(next);
            if (!sameHold(turn, next) || (layer != Face.L && layer != Face.U)) {
                break;
            }
            last = layer == Face.L ? next : last;
        }
        return last;
    }

    /** Where the tilt begins: at the first L, or with the U turns before it. */
    private int firstReached(int turn) {
        if (random.nextInt(2) == 0) {
            return turn;
        }
        int first = turn;
        while (first > 0
                && facts.place(first) != StreamFacts.Place.FIRST
                && sameHold(first - 1, turn)
                && holds.get(first - 1) == track.holds().get(first - 1)
                && track.layer(first - 1) == Face.U) {
            first--;
        }
        return first;
    }

    private void tilt(int first, int last) {
        for (int turn = first; turn <= last; turn++) {
            holds.set(turn, holds.get(turn).then(TILT));
        }
    }

    /** Makes a lone L a wide r, taken back one to three turns later. Returns the last turn in the changed hold. */
    private int widen(int turn) {
        Orientation hold = track.holds().get(turn);
        Orientation change = RotationReading.alongside(hold.toHand(track.turns().get(turn)));
        int last = Math.min(track.size() - 1, turn + 1 + random.nextInt(3));
        for (int next = turn + 1; next <= last; next++) {
            holds.set(next, holds.get(next).then(change));
        }
        return last;
    }
}
