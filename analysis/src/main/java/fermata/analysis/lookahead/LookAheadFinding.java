package fermata.analysis.lookahead;

import fermata.analysis.record.StageName;
import fermata.analysis.rest.Cause;
import fermata.analysis.rest.ExplainedRest;
import fermata.decoder.cube.Face;
import java.util.List;
import java.util.Objects;

/**
 * What could be known before a pair or block, and whether the hand rested there.
 *
 * @param stage the pair or block
 * @param faces as in {@link fermata.analysis.record.StageRecord#faces()}
 * @param beforeTurn its first turn
 * @param outlook what could be known
 * @param rest the beat before its first turn
 * @param sooner another pair that could be found sooner by at least the margin, by its faces; empty if none
 * @param soonerByMicros by so much, against the chosen one or the moment it was needed; 0 if none
 * @param holdProbability that the cube was held as assumed, on average over the stage before
 */
public record LookAheadFinding(
        StageName stage,
        List<Face> faces,
        int beforeTurn,
        Outlook outlook,
        ExplainedRest rest,
        List<Face> sooner,
        long soonerByMicros,
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

    /** A rest, likely with looking in it, before a pair or block that could have been found earlier. */
    public boolean isFermata() {
        return outlook instanceof Outlook.Identifiable
                && rest.reading().isRestOfAtLeast(REST_MICROS)
                && lookingProbability() >= LIKELY;
    }

    /** A rest, likely with looking in it, where a small tilt would have helped. */
    public boolean isTiltHint() {
        return outlook instanceof Outlook.WithTilt
                && rest.reading().isRestOfAtLeast(REST_MICROS)
                && lookingProbability() >= LIKELY;
    }

    /** How likely this is what it is called: a long rest, with looking in it, the cube held as assumed. */
    public double probability() {
        return rest.reading().probabilityOfAtLeast(REST_MICROS) * lookingProbability() * holdProbability;
    }

    /** How long the hand rested beyond its rhythm, whatever for. */
    public double restMicros() {
        return rest.reading().excessMicros();
    }

    private double lookingProbability() {
        return rest.shares().stream()
                .filter(share -> share.cause() == Cause.LOOK_AHEAD)
                .mapToDouble(share -> share.probability())
                .max()
                .orElse(0);
    }
}
