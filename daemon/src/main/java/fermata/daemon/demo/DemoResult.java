package fermata.daemon.demo;

import java.util.Objects;

/**
 * What the demo recorded, as {@code demo --json} prints it.
 *
 * @param home the directory it is in
 * @param frames frames on the disk
 * @param turns what became of the turns
 * @param attempts attempts found
 * @param solves those that ended solved
 */
public record DemoResult(String home, long frames, Turns turns, long attempts, long solves) {
    /** Turns heard, read from a later frame's history, and known to be lost. */
    public record Turns(long heard, long repaired, long lost) {}

    public DemoResult {
        Objects.requireNonNull(home, "home");
        Objects.requireNonNull(turns, "turns");
    }
}
