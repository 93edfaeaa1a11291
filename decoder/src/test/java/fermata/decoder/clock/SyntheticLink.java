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

    Run run(long seed) {
        Random random = new Random(seed);
        int most = (int) (minutes * 60 * 20);
        double[] truth = new double[most];
        double[] arrival = new double[most];
        int size = 0;
        double now = 10e6;
        double lastArrival = 0;
        double phase = random.nextDouble() * intervalMicros;
        while (now < 10e6 + minutes * 60e6) {
            // Bursts of turns with pauses between solves.
            boolean pauses = random.nextDouble() < 0.02;
            now += pauses ? 8e6 * random.nextDouble() : 80_000 - 250_000 * Math.log(random.nextDouble());
            double sent = phase + Math.ceil((now - phase) / intervalMicros) * intervalMicros;
            while (random.nextDouble() < loss) {
                sent += intervalMicros;
            }
            double host = MIN_DELAY_MICROS + random.nextDouble() * 300;
            if (random.nextDouble() < tailShare) {
                host += -TAIL_MICROS * Math.log(random.nextDouble());
            }
            // A link keeps the order of what it carries.
            lastArrival = Math.max(lastArrival, sent + host);
            truth[size] = now;
            arrival[size++] = lastArrival;
        }
        return rounded(truth, arrival, size);
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
