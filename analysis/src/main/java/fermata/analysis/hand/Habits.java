package fermata.analysis.hand;

import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.hold.InferredRotation;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;
import java.util.List;

/**
 * What a solver's corrections teach: how much oftener than was inferred the solver begins in a hold, turns a layer, and
 * makes a rotation. Where the inference was right a correction teaches nothing.
 *
 * <p>Each is a log ratio of counts with pseudo-counts added to both, so that little data moves it little, and kept
 * within e^-{@value #LIMIT} and e^{@value #LIMIT}. Immutable, thread-safe. Source: ratios shrunk by equal
 * pseudo-counts, as in Dirichlet smoothing; the pseudo-counts are ours.
 */
public final class Habits {
    /** Nobody corrected anything. */
    public static final Habits NONE = new Habits();

    private static final double LIMIT = 2;
    /** A start counts once a solve, a rotation some times, a layer dozens of times. */
    private static final double START_PRIOR = 1;

    private static final double ROTATION_PRIOR = 4;
    private static final double LAYER_PRIOR = 30;

    private final double[] ofStart = new double[24];
    private final double[] ofRotation = new double[24];
    private final double[] ofLayer = new double[6];
    private final int solves;

    /**
     * A corrected solve.
     *
     * @param turns as heard
     * @param inferred what was read without habits
     * @param stated what the solver said
     */
    public record Corrected(List<Turn> turns, HandReading inferred, HandReading stated) {
        public Corrected {
            turns = List.copyOf(turns);
            if (turns.size() != inferred.turns().size()
                    || turns.size() != stated.turns().size()) {
                throw new IllegalArgumentException(
                        turns.size() + " turns, " + inferred.turns().size() + " inferred and "
                                + stated.turns().size() + " stated");
            }
        }
    }

    private Habits() {
        this.solves = 0;
    }

    private Habits(List<Corrected> corrected) {
        this.solves = corrected.size();
        Counts said = new Counts();
        Counts read = new Counts();
        corrected.forEach(one -> {
            said.add(one.turns(), one.stated());
            read.add(one.turns(), one.inferred());
        });
        fill(ofStart, said.starts, read.starts, START_PRIOR);
        fill(ofRotation, said.rotations, read.rotations, ROTATION_PRIOR);
        fill(ofLayer, said.layers, read.layers, LAYER_PRIOR);
    }

    /** Learns from a solver's corrected solves; their order does not matter. */
    public static Habits learn(List<Corrected> corrected) {
        return corrected.isEmpty() ? NONE : new Habits(corrected);
    }

    private static final class Counts {
        final int[] starts = new int[24];
        final int[] rotations = new int[24];
        final int[] layers = new int[6];

        void add(List<Turn> turns, HandReading reading) {
            starts[reading.turns().get(0).hold().index()]++;
            for (InferredRotation rotation : reading.rotations()) {
                rotations[rotation.rotation().index()]++;
            }
            for (int turn = 0; turn < turns.size(); turn++) {
                Orientation hold = reading.turns().get(turn).hold();
                layers[hold.handAt(turns.get(turn).face()).ordinal()]++;
            }
        }
    }

    private static void fill(double[] logs, int[] said, int[] read, double prior) {
        for (int what = 0; what < logs.length; what++) {
            double ratio = Math.log((said[what] + prior) / (read[what] + prior));
            logs[what] = Math.max(-LIMIT, Math.min(LIMIT, ratio));
        }
    }

    /** Whether nothing was learned. */
    public boolean isNone() {
        return solves == 0;
    }

    /** How many corrected solves they were learned from. */
    public int solves() {
        return solves;
    }

    /** The habits as evidence about a stream of turns. */
    public HoldEvidence evidence(List<Turn> turns) {
        return new HoldEvidence() {
            @Override
            public double ofHold(int turn, Orientation hold) {
                double layer = ofLayer[hold.handAt(turns.get(turn).face()).ordinal()];
                return turn == 0 ? layer + ofStart[hold.index()] : layer;
            }

            @Override
            public double ofRotation(int beforeTurn, Orientation rotation) {
                return ofRotation[rotation.index()];
            }
        };
    }
}
