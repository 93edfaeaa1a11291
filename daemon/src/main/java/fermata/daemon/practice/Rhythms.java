package fermata.daemon.practice;

import fermata.analysis.rest.Rhythm;
import fermata.daemon.json.Json;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Frozen rhythms by their ids. Not thread-safe. */
final class Rhythms {
    private final Function<String, Optional<String>> stored;
    private final Map<String, Rhythm> known = new HashMap<>();

    /** @param stored the JSON of a snapshot by its id */
    Rhythms(Function<String, Optional<String>> stored) {
        this.stored = stored;
        known.put(RhythmChain.COLD_START, Rhythm.coldStart());
    }

    /** A rhythm that a day left. */
    Rhythm of(String id) {
        return known.computeIfAbsent(id, this::read);
    }

    private Rhythm read(String id) {
        String json = stored.apply(id)
                .orElseThrow(() -> new IllegalStateException("a day left rhythm " + id + ", but no"
                        + " snapshot has that id; the practice was altered by something else"));
        return Json.read(json, Rhythm.class);
    }
}
