package fermata.analysis.rest;

import fermata.analysis.rhythm.RestSnapshot;
import fermata.analysis.rhythm.SnapshotId;
import java.util.Objects;

/**
 * All that is learned of a solver's rests, frozen.
 *
 * @param beats how fast turns follow each other and how often they are held up
 * @param causes by what, and for how long
 */
public record Rhythm(RestSnapshot beats, CauseSnapshot causes) {
    public Rhythm {
        Objects.requireNonNull(beats, "beats");
        Objects.requireNonNull(causes, "causes");
    }

    /** Where everybody begins. */
    public static Rhythm coldStart() {
        return new Rhythm(RestSnapshot.coldStart(), CauseSnapshot.coldStart());
    }

    /** Twelve hexadecimal digits of a SHA-256 over the values. */
    public String id() {
        return SnapshotId.of(beats.id() + causes.id());
    }
}
