package fermata.daemon.store;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What this process noticed to be missing or altered while it read. Safe for use by many threads. */
final class LossNotes {
    private final List<Missing> missing = new ArrayList<>();
    private final Map<Long, String> captures = new LinkedHashMap<>();

    /** Notes rows that are not there; true if that is news. */
    synchronized boolean add(Missing found) {
        boolean isNews = missing.stream().noneMatch(known -> known.covers(found));
        if (isNews) {
            missing.add(found);
        }
        return isNews;
    }

    /** Notes what is wrong with a capture's own row. */
    synchronized void add(long captureId, String what) {
        captures.put(captureId, what);
    }

    synchronized List<Missing> missing() {
        return List.copyOf(missing);
    }

    /** A sentence for each capture. */
    synchronized List<String> captures() {
        return List.copyOf(captures.values());
    }
}
