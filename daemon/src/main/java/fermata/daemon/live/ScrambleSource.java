package fermata.daemon.live;

import java.util.Optional;

/** Where scrambles come from. */
@FunctionalInterface
public interface ScrambleSource {
    /** The next scramble, or nothing if none is ready; never waits. Safe for use by many threads. */
    Optional<Scramble> next();
}
