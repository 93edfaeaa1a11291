package fermata.daemon.json;

import java.util.List;

/**
 * All practice days, newest first.
 *
 * @param nights the days
 */
public record NightsView(List<Item> nights) {
    /** One day; times are null while there are too few solves. */
    public record Item(String day, int solves, Long bestUs, Long meanUs) {}
}
