package fermata.analysis.rest;

import fermata.analysis.rhythm.BeatReading;
import java.util.List;

/**
 * A beat with what may have held it up.
 *
 * @param reading what the rhythm makes of it
 * @param suspicions never empty: something unexplained is always possible
 */
record Suspected(BeatReading reading, List<Suspicion> suspicions) {
    Suspected {
        suspicions = List.copyOf(suspicions);
    }

    CauseSharing sharing(CauseSnapshot causes) {
        double noise = reading.fluentMicros() * reading.fluentSpread();
        return CauseSharing.of(suspicions, causes, reading.excessMicros(), noise * noise);
    }
}
