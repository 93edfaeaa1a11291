package fermata.analysis.rest;

/**
 * A cause that may have taken part in a rest.
 *
 * @param circumstance what makes it possible
 * @param reading how sure the circumstance itself is, 0..1
 */
record Suspicion(Circumstance circumstance, double reading) {
    double presence(CauseSnapshot causes) {
        return Math.min(0.999, reading * causes.presence(circumstance));
    }
}
