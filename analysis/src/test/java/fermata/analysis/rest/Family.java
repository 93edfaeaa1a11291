package fermata.analysis.rest;

import fermata.rehearsal.truth.RestCause;
import java.util.SplittableRandom;

/**
 * Where fluent intervals and rests come from. Medians are the character's; what differs is the shape around them, and
 * what the solver does besides.
 */
enum Family {
    /** Log-normal all through, as the model has it. */
    AS_MODELLED,
    /** Gamma-shaped, with a pace that wanders in the course of the evening. */
    GAMMA_WITH_DRIFT,
    /** Log-normal, but heard through a radio that hands over every 30 ms only. */
    BATCHED,
    /** The first two pairs were found while inspecting; the later ones are sought for longer. */
    REMEMBERS_INSPECTION,
    /** Turns the cube while looking: both go on at once, and the longer one decides. */
    TURNS_WHILE_LOOKING;

    static final long BATCH_MICROS = 30_000;
    private static final long SHORTEST_MICROS = 40_000;
    private static final double FLUENT_SHAPE = 14;
    private static final double REST_SHAPE = 7;

    long fluent(SplittableRandom random, double median, double spread) {
        double drawn = this == GAMMA_WITH_DRIFT
                ? gamma(random, FLUENT_SHAPE, median)
                : median * Math.exp(spread * random.nextGaussian());
        return Math.max(SHORTEST_MICROS, Math.round(drawn));
    }

    long rest(SplittableRandom random, double median, double spread) {
        double drawn = this == GAMMA_WITH_DRIFT
                ? gamma(random, REST_SHAPE, median)
                : median * Math.exp(spread * random.nextGaussian());
        return Math.max(SHORTEST_MICROS, Math.round(drawn));
    }

    /** How likely a pair has to be looked for, given the character's own probability. */
    double lookAheadProbability(int pair, double usual) {
        return this != REMEMBERS_INSPECTION ? usual : pair <= 2 ? 0.05 : Math.min(0.95, 1.3 * usual);
    }

    boolean overlaps(RestCause one, RestCause other) {
        boolean isLook = one == RestCause.LOOK_AHEAD || one == RestCause.RECOGNITION;
        return this == TURNS_WHILE_LOOKING && isLook && other == RestCause.ROTATION;
    }

    /** Marsaglia, Tsang 2000, for shapes of at least 1; the median is about shape - 1/3 scales (Wilson, Hilferty). */
    private static double gamma(SplittableRandom random, double shape, double median) {
        double d = shape - 1.0 / 3;
        double c = 1 / Math.sqrt(9 * d);
        while (true) {
            double normal = random.nextGaussian();
            double v = Math.pow(1 + c * normal, 3);
            if (v > 0 && Math.log(random.nextDouble()) < normal * normal / 2 + d - d * v + d * Math.log(v)) {
                return median * v;
            }
        }
    }
}
