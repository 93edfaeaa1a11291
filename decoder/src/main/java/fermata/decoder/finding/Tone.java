package fermata.decoder.finding;

/**
 * How steadily a wrapping number turns with time: its value as an angle, against the best constant frequency. A clock's
 * angles keep step, whatever its tick; those of anything else do not. As the periodogram of circular data (Lomb 1976
 * for times that are not evenly spaced).
 *
 * @param hertz full turns a second
 * @param coherence length of the mean of the angles' differences, 0..1: 1 if all keep step
 * @param phase mean difference, in turns
 */
record Tone(double hertz, double coherence, double phase) {
    /** Of 0.2 s and more a turn: shorter ones the delays of a radio blur. */
    private static final double HIGHEST_HERTZ = 5;

    /** Of 12.8 s and less a turn, so 50 ms a step: a slow drift would look as steady as a slower clock. */
    private static final double LOWEST_HERTZ = 0.078;

    /** Grid steps a width of the peak, then steps to its top. */
    private static final int STEPS_A_PEAK = 3;

    private static final int REFINEMENTS = 24;

    /**
     * The best frequency. Cost: grid steps x values, some thousand times a hundred.
     *
     * @param turns each value as a share of its range
     * @param seconds when each came
     */
    static Tone of(double[] turns, double[] seconds) {
        double span = seconds[seconds.length - 1] - seconds[0];
        double step = 1 / (STEPS_A_PEAK * span);
        int grid = (int) (HIGHEST_HERTZ / step);
        int first = (int) Math.ceil(LOWEST_HERTZ / step);
        double best = 0;
        double bestHertz = first * step;
        double[] re = new double[turns.length];
        double[] im = new double[turns.length];
        double[] stepRe = new double[turns.length];
        double[] stepIm = new double[turns.length];
        for (int i = 0; i < turns.length; i++) {
            double start = 2 * Math.PI * (turns[i] - first * step * seconds[i]);
            re[i] = Math.cos(start);
            im[i] = Math.sin(start);
            stepRe[i] = Math.cos(2 * Math.PI * step * seconds[i]);
            stepIm[i] = -Math.sin(2 * Math.PI * step * seconds[i]);
        }
        for (int k = first; k <= grid; k++) {
            double sumRe = 0;
            double sumIm = 0;
            for (int i = 0; i < re.length; i++) {
                sumRe += re[i];
                sumIm += im[i];
                double turned = re[i] * stepRe[i] - im[i] * stepIm[i];
                im[i] = re[i] * stepIm[i] + im[i] * stepRe[i];
                re[i] = turned;
            }
            double power = sumRe * sumRe + sumIm * sumIm;
            if (power > best) {
                best = power;
                bestHertz = k * step;
            }
        }
        return refined(turns, seconds, bestHertz, step);
    }

    /** The tone at a frequency. */
    static Tone at(double[] turns, double[] seconds, double hertz) {
        double re = 0;
        double im = 0;
        for (int i = 0; i < turns.length; i++) {
            double angle = 2 * Math.PI * (turns[i] - hertz * seconds[i]);
            re += Math.cos(angle);
            im += Math.sin(angle);
        }
        return new Tone(hertz, Math.hypot(re, im) / turns.length, Math.atan2(im, re) / (2 * Math.PI));
    }

    private static Tone refined(double[] turns, double[] seconds, double hertz, double step) {
        Tone best = at(turns, seconds, hertz);
        double reach = step / 2;
        for (int i = 0; i < REFINEMENTS; i++) {
            Tone lower = at(turns, seconds, best.hertz - reach);
            Tone higher = at(turns, seconds, best.hertz + reach);
            Tone better = lower.coherence > higher.coherence ? lower : higher;
            best = better.coherence > best.coherence ? better : best;
            reach /= 1.5;
        }
        return best;
    }
}
