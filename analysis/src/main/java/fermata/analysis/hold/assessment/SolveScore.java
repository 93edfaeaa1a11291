package fermata.analysis.hold.assessment;

import fermata.analysis.hold.HoldReading;
import fermata.analysis.hold.HoldTrack;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.List;

/**
 * One reading held against the truth.
 *
 * <p>A turn's layer is right if the solver saw it where the reading says. Its hold is right if its layer is
 * right and so is the layer of the next turn on another axis (in the last run: of the turn before that run),
 * since two layers on two axes fix the hold. Wide turns count as the opposite layer and a rotation, and a
 * rotation that commutes with a turn may stand on either side of it: both are so by comparing layers and
 * nothing else.
 *
 * @param turns how many
 * @param layersRight turns whose layer is right
 * @param holds per turn the stated probability and whether the hold is right
 * @param rotationsTrue rotations in the truth, changes of hold by wide turns and slices included
 * @param rotationsFound rotations in the reading, counted alike
 * @param rotationsHit found ones that stand within one turn of a true one with the same net rotation, each used
 * once; turns     about the rotation's own axis do not count as distance
 * @param logScore sum over turns of the natural logarithm of the probability given to the true layer
 */
public record SolveScore(
        int turns,
        int layersRight,
        List<Stated> holds,
        int rotationsTrue,
        int rotationsFound,
        int rotationsHit,
        double logScore) {
    /** No stated probability counts as less than this, so that one certain error cannot outweigh all else. */
    private static final double FLOOR = 1e-6;

    /**
     * A stated probability and what came of it.
     *
     * @param probability as stated, 0..1
     * @param right whether it was so
     */
    public record Stated(double probability, boolean right) {}

    public SolveScore {
        holds = List.copyOf(holds);
    }

    /** Compares. Cost: linear in turns. */
    public static SolveScore of(HoldTrack truth, HoldReading reading) {
        HoldTrack read = reading.track();
        if (!truth.turns().equals(read.turns())) {
            throw new IllegalArgumentException("the reading is of other turns than the truth");
        }
        int layersRight = 0;
        double logScore = 0;
        List<Stated> holds = new ArrayList<>();
        for (int turn = 0; turn < truth.size(); turn++) {
            boolean layerRight = truth.layer(turn) == read.layer(turn);
            int partner = HoldTrack.partner(truth.turns(), turn);
            boolean holdRight = layerRight && truth.layer(partner) == read.layer(partner);
            holds.add(new Stated(reading.turns().get(turn).probability(), holdRight));
            layersRight += layerRight ? 1 : 0;
            logScore += Math.log(Math.max(FLOOR, reading.odds().at(turn, truth.layer(turn))));
        }
        List<Placed> wanted = placed(truth);
        List<Placed> found = placed(read);
        int hit = hits(truth, wanted, found);
        return new SolveScore(truth.size(), layersRight, holds, wanted.size(), found.size(), hit, logScore);
    }

    /** Turns whose hold is right. */
    public int holdsRight() {
        return (int) holds.stream().filter(Stated::right).count();
    }

    private record Placed(int beforeTurn, Orientation rotation) {}

    private static List<Placed> placed(HoldTrack track) {
        List<Placed> rotations = new ArrayList<>();
        for (int turn = 1; turn < track.size(); turn++) {
            if (track.rotationBefore(turn) != Orientation.IDENTITY) {
                rotations.add(new Placed(turn, track.rotationBefore(turn)));
            }
        }
        return rotations;
    }

    private static int hits(HoldTrack truth, List<Placed> wanted, List<Placed> found) {
        List<Placed> free = new ArrayList<>(found);
        int hits = 0;
        for (int slack = 0; slack <= 1; slack++) {
            List<Placed> missed = new ArrayList<>();
            for (Placed one : wanted) {
                int place = firstWithin(truth, one, free, slack);
                if (place >= 0) {
                    free.remove(place);
                    hits++;
                } else {
                    missed.add(one);
                }
            }
            wanted = missed;
        }
        return hits;
    }

    private static int firstWithin(HoldTrack truth, Placed one, List<Placed> free, int slack) {
        for (int place = 0; place < free.size(); place++) {
            Placed other = free.get(place);
            if (other.rotation() == one.rotation() && distance(truth, one, other.beforeTurn()) <= slack) {
                return place;
            }
        }
        return -1;
    }

    /** Turns between the two places that do not commute with the rotation. */
    private static int distance(HoldTrack truth, Placed one, int other) {
        int between = 0;
        for (int turn = Math.min(one.beforeTurn(), other); turn < Math.max(one.beforeTurn(), other); turn++) {
            boolean commutes = one.rotation().handAt(truth.layer(turn)) == truth.layer(turn);
            between += commutes ? 0 : 1;
        }
        return between;
    }
}
