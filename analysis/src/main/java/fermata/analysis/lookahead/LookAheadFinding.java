package fermata.analysis.lookahead;

import fermata.analysis.record.StageName;
import fermata.analysis.rest.Cause;
import fermata.analysis.rest.CauseShare;
import fermata.analysis.rest.ExplainedRest;
import fermata.decoder.cube.Face;
import java.util.List;
import java.util.Objects;
import java.util.function.ToDoubleFunction;

/**
 * What could be known before a pair or block, and whether the hand rested there.
 *
 * @param stage the pair or block
 * @param faces as in {@link fermata.analysis.record.StageRecord#faces()}
 * @param beforeTurn its first turn
 * @param outlook what could be known
 * @param rest the beat before its first turn
 * @param sooner another pair that could be found sooner by at least the margin, by its faces; empty if none
 * @param soonerLeadMicros so long before one was needed that other pair could be found; 0 if none
 * @param holdProbability that the cube was held as assumed, on average over the stage before
 */
public record LookAheadFinding(
        StageName stage,
        List<Face> faces,
        int beforeTurn,
        Outlook outlook,
        ExplainedRest rest,
        List<Face> sooner,
        long soonerLeadMicros,
        double holdProbability) {
    /** Nothing shorter is called a rest here. */
    public static final long REST_MICROS = 300_000;

    private static final double LIKELY = 0.5;

    public LookAheadFinding {
        Objects.requireNonNull(stage, "stage");
        faces = List.copyOf(faces);
        Objects.requireNonNull(outlook, "outlook");
        Objects.requireNonNull(rest, "rest");
        sooner = List.copyOf(sooner);
        if (!(holdProbability >= 0 && holdProbability <= 1)) {
            throw new IllegalArgumentException("holdProbability " + holdProbability + " is not in 0..1");
        }
    }

    /** Whether it is about a block; else it is about a pair. */
    public boolean isBlock() {
        return stage == StageName.BLOCK1 || stage == StageName.BLOCK2;
    }

    /**
     * Whether there was a rest before it, likely with looking in it, and looking for long enough: a cube turned as a
     * whole takes its time too, and what is left beside it may be no more than a glance.
     */
    public boolean isLookedFor() {
        return rest.reading().isRestOfAtLeast(REST_MICROS)
                && looking(CauseShare::probability) >= LIKELY
                && looking(CauseShare::micros) >= REST_MICROS;
    }

    /** A rest, likely with looking in it, before a pair or block that could have been found earlier. */
    public boolean isFermata() {
        return outlook instanceof Outlook.Identifiable && isLookedFor();
    }

    /** A rest, likely with looking in it, where a small tilt would have helped. */
    public boolean isTiltHint() {
        return outlook instanceof Outlook.WithTilt && isLookedFor();
    }

    /** How likely it is that there was no long rest with looking in it. */
    public double inTimeProbability() {
        return 1 - rest.reading().probabilityOfAtLeast(REST_MICROS) * lookingProbability();
    }

    /** How likely this is what it is called: a long rest, with looking in it, the cube held as assumed. */
    public double probability() {
        return rest.reading().probabilityOfAtLeast(REST_MICROS) * lookingProbability() * holdProbability;
    }

    /** How long the hand rested beyond its rhythm, whatever for. */
    public double restMicros() {
        return rest.reading().excessMicros();
    }

    /**
     * How likely the hand looked for at least {@link #REST_MICROS}, if it rested: no more than that it looked at all,
     * nor than the time looked on average allows (Markov's inequality).
     */
    private double lookingProbability() {
        return Math.min(looking(CauseShare::probability), looking(CauseShare::micros) / REST_MICROS);
    }

    private double looking(ToDoubleFunction<CauseShare> what) {
        return rest.shares().stream()
                .filter(share -> share.cause() == Cause.LOOK_AHEAD)
                .mapToDouble(what)
                .max()
                .orElse(0);
    }
}
