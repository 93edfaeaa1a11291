package fermata.daemon.store;

import java.nio.file.Path;
import java.util.Objects;

/**
 * What came back of a damaged database.
 *
 * @param file where it is now
 * @param captures captures that were not there before
 * @param frames frames that were not there before
 * @param events told events that were not there before
 * @param alreadyThere frames and events that could be read and were there
 */
public record Recovered(Path file, long captures, long frames, long events, long alreadyThere) {
    public Recovered {
        Objects.requireNonNull(file, "file");
    }

    Recovered movedTo(Path other) {
        return new Recovered(other, captures, frames, events, alreadyThere);
    }
}
