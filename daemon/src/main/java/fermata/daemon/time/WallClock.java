package fermata.daemon.time;

/** Civil time as the board believes it; may be wrong and may jump, so nothing is ever ordered or measured by it. */
@FunctionalInterface
public interface WallClock {
    /** Milliseconds since 1970-01-01T00:00Z. */
    long epochMillis();

    /** The machine's civil clock. */
    static WallClock system() {
        return System::currentTimeMillis;
    }
}
