package fermata.decoder.finding;

import fermata.decoder.cube.Turn;
import fermata.decoder.finding.Lesson.Example;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Frames of a device that sends its whole state: the one of the solved cube, and frames one asked turn apart.
 *
 * @param solved the last frame before the first turn was asked for
 * @param pairs a frame, the turn asked for after it, and the one frame that came then
 */
record StatePairs(Heard solved, List<Pair> pairs) {
    /** Fewer leave a place of the cube untouched or its neighbours unclear. */
    private static final int LEAST_PAIRS = 24;

    /** One turn, if it was made as asked: a slip in thirty was not. */
    record Pair(Heard before, Turn asked, Heard after) {}

    static Optional<StatePairs> of(FrameGroup group, Lesson lesson) {
        List<Heard> frames = group.distinct();
        Optional<Heard> solved = frames.stream().filter(f -> f.prompt() <= 0).reduce((a, b) -> b);
        List<Pair> pairs = new ArrayList<>();
        for (Example example : lesson.singles(frames)) {
            int at = frames.indexOf(example.frame());
            boolean isLone =
                    at > 0 && frames.get(at - 1).prompt() < example.frame().prompt();
            if (isLone) {
                pairs.add(new Pair(frames.get(at - 1), example.asked(), example.frame()));
            }
        }
        return pairs.size() < LEAST_PAIRS ? Optional.empty() : solved.map(first -> new StatePairs(first, pairs));
    }
}
