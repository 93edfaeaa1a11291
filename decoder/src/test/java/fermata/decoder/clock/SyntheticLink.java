package fermata.decoder.clock;

import java.util.Random;

/**
 * A made-up radio link with a known truth: events at random moments, a device clock with skew and slow wander that
 * counts whole ticks, notifications that wait for the next connection event, are lost and sent again an interval later,
 * and a host that is sometimes slow.
 */
record SyntheticLink(
        double minutes,
        double intervalMicros,
        double skewPpm,
        double wanderPpm,
        double loss,
        double tailShare,
        int tick) {
    /** The set-up of the comparison: 20 min, 30 ppm and wander, 10 % loss, 2 % host tail, 1 ms clock. */
    static final SyntheticLink COMPARED = new SyntheticLink(20, 45_000, 30, 1, 0.10, 0.02, 1000);

    /** When the connection begins. */
    static final long START_MICROS = 10_000_000;

    private static final double MIN_DELAY_MICROS = 1_000;
    private static final double TAIL_MICROS = 60_000;
    private static final double WANDER_PERIOD_MICROS = 900e6;

    /**
     * What came of it, sorted by arrival.
     *
     * @param truthMicros when each event happened on the board's clock
     */
    record Run(long[] truthMicros, long[] deviceMicros, long[] arrivalMicros) {}

    SyntheticLink withMinutes(double newMinutes) {
        return new SyntheticLink(newMinutes, intervalMicros, skewPpm, wanderPpm, loss, tailShare, tick);
    }

    SyntheticLink withInterval(double micros) {
        return new SyntheticLink(minutes, micros, skewPpm, wanderPpm, loss, tailShare, tick);
    }

    SyntheticLink withNoise(double newLoss, double newTail) {
        return new SyntheticLink(minutes, intervalMicros, skewPpm, wanderPpm, newLoss, newTail, tick);
    }

    SyntheticLink withSkew(double ppm) {
        return new SyntheticLink(minutes, intervalMicros, ppm, wanderPpm, loss, tailShare, tick);
    }

    /** Bursts of turns with pauses between solves, all the time. */
    Run run(long seed) {
        Random random = new Random(seed);
        double phase = random.nextDouble() * intervalMicros;
        Carried carried = new Carried((int) (minutes * 60 * 20), phase);
        double now = START_MICROS;
        while (now < START_MICROS + minutes * 60e6) {
            boolean pauses = random.nextDouble() < 0.02;
            now += pauses ? 8e6 * random.nextDouble() : nextTurn(random);
            carry(now, random, carried);
        }
        return rounded(carried.truth, carried.arrival, carried.size);
    }

    /**
     * An evening in one connection: each solve is a scramble of 20 turns, a look of 4 to 12 s and 40 to 80 turns; then
     * the cube lies for a while.
     *
     * @param breakSeconds shortest and longest time that it lies
     */
    Run evening(long seed, int solves, double... breakSeconds) {
        Random random = new Random(seed);
        double phase = random.nextDouble() * intervalMicros;
        Carried carried = new Carried(solves * 100, phase);
        double now = START_MICROS;
        for (int solve = 0; solve < solves; solve++) {
            for (int turn = 0; turn < 20; turn++) {
                now += nextTurn(random);
                carry(now, random, carried);
            }
            now += 4e6 + 8e6 * random.nextDouble();
            int turns = 40 + random.nextInt(41);
            for (int turn = 0; turn < turns; turn++) {
                now += nextTurn(random);
                carry(now, random, carried);
            }
            now += 1e6 * (breakSeconds[0] + (breakSeconds[1] - breakSeconds[0]) * random.nextDouble());
        }
        return rounded(carried.truth, carried.arrival, carried.size);
    }

    private static double nextTurn(Random random) {
        return 80_000 - 250_000 * Math.log(random.nextDouble());
    }

    /** What the link has carried so far. */
    private static final class Carried {
        private final double[] truth;
        private final double[] arrival;
        private final double phase;
        private int size;
        private double lastArrival;

        private Carried(int most, double phase) {
            this.truth = new double[most];
            this.arrival = new double[most];
            this.phase = phase;
        }
    }

    private void carry(double now, Random random, Carried carried) {
        double sent = carried.phase + Math.ceil((now - carried.phase) / intervalMicros) * intervalMicros;
        while (random.nextDouble() < loss) {
            sent += intervalMicros;
        }
        double host = MIN_DELAY_MICROS + random.nextDouble() * 300;
        if (random.nextDouble() < tailShare) {
            host += -TAIL_MICROS * Math.log(random.nextDouble());
        }
        // A link keeps the order of what it carries.
        carried.lastArrival = Math.max(carried.lastArrival, sent + host);
        carried.truth[carried.size] = now;
        carried.arrival[carried.size++] = carried.lastArrival;
    }

    private Run rounded(double[] truth, double[] arrival, int size) {
        long[] truths = new long[size];
        long[] devices = new long[size];
        long[] arrivals = new long[size];
        for (int i = 0; i < size; i++) {
            double device = truth[i] * (1 - skewPpm * 1e-6)
                    + wanderPpm
                            * 1e-6
                            * WANDER_PERIOD_MICROS
                            / (2 * Math.PI)
                            * Math.sin(2 * Math.PI * truth[i] / WANDER_PERIOD_MICROS);
            truths[i] = Math.round(truth[i]);
            devices[i] = (long) Math.floor(device / tick) * tick;
            arrivals[i] = Math.round(arrival[i]);
        }
        return new Run(truths, devices, arrivals);
    }
}
