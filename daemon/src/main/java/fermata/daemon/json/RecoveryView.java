package fermata.daemon.json;

import java.util.List;

/**
 * What {@code recover} did.
 *
 * @param recovered each file that was read
 * @param missing what was acknowledged and still cannot be read
 */
public record RecoveryView(List<Source> recovered, List<Range> missing) {
    public RecoveryView {
        recovered = List.copyOf(recovered);
        missing = List.copyOf(missing);
    }

    /**
     * A damaged database.
     *
     * @param file where it is now
     * @param captures captures that came back
     * @param frames frames that came back
     * @param events told events that came back
     * @param alreadyThere frames and events that could be read and were there
     */
    public record Source(String file, long captures, long frames, long events, long alreadyThere) {}

    /**
     * Rows that are missing.
     *
     * @param kind {@code frame} or {@code event}
     * @param first number of the first
     * @param last number of the last
     */
    public record Range(String kind, long first, long last) {}
}
