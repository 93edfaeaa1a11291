package fermata.decoder.finding;

import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.BitField.Order;
import fermata.decoder.stream.profile.StateEncoding.Run;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** All runs of equal fields that fit into a frame. Stateless. */
final class RunWalk {
    private static final int WIDEST = 8;

    private RunWalk() {}

    /** Runs of {@code count} fields of {@code narrowest} to 8 bits, side by side or with up to one bit between. */
    static List<Run> runs(int count, int narrowest, int frameBytes, Predicate<Run> fits) {
        List<Run> runs = new ArrayList<>();
        for (Order order : Order.values()) {
            for (int width = narrowest; width <= WIDEST; width++) {
                for (int stride = width; stride <= Math.min(width + 1, WIDEST); stride++) {
                    int length = stride * (count - 1) + width;
                    for (int at = 0; at + length <= frameBytes * 8; at++) {
                        Run run = new Run(new BitField(at, width, order, false), stride);
                        if (fits.test(run)) {
                            runs.add(run);
                        }
                    }
                }
            }
        }
        return runs;
    }
}
