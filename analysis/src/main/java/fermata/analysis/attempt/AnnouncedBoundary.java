package fermata.analysis.attempt;

import fermata.analysis.record.Boundary;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Where an announced scramble was done.
 *
 * <p>First its state is looked for, from the reference. If that never came, its words are: from some position the
 * turns made the same change of the cube as the words would in one of the 24 holds. A change of the cube is
 * indifferent to how it was made, so quarter turns heard singly, the order of opposite faces, and a wrong turn that
 * was taken back do not matter, nor does the state in which it began.
 *
 * <p>Cost: one state a position, and 24 for each of the first {@value #LATEST_BEGINNING} positions.
 *
 * @param from where the scramble begins
 * @param to where it ends and the attempt may begin
 * @param hold how the cube was held while the words were done
 * @param boundary by state or by words
 */
record AnnouncedBoundary(int from, int to, Orientation hold, Boundary boundary) {
    /** How many turns may pass between the announcement and the first turn of its words. */
    static final int LATEST_BEGINNING = 120;

    /**
     * Looks from {@code from} to {@code to}.
     *
     * @return empty if the scramble was not done there, or its words change nothing
     */
    static Optional<AnnouncedBoundary> find(Track track, Sequence words, int from, int to) {
        CubeState change = words.state();
        if (change.isSolved()) {
            return Optional.empty();
        }
        for (int position = from; position <= to; position++) {
            CubeState relative = position == from
                    ? track.relative(position)
                    : track.reachedAt(position).relativeTo(track.referenceAt(position - 1));
            if (relative.equals(change)) {
                return Optional.of(
                        new AnnouncedBoundary(from, position, Orientation.IDENTITY, Boundary.ANNOUNCED_STATE));
            }
        }
        return findWords(track, words, from, to);
    }

    private static Optional<AnnouncedBoundary> findWords(Track track, Sequence words, int from, int to) {
        Map<CubeState, Integer> firstReached = new HashMap<>();
        List<CubeState> changes = changes(words);
        AnnouncedBoundary found = null;
        for (int position = to; position > from; position--) {
            firstReached.put(track.reachedAt(position), position);
            if (position - 1 - from >= LATEST_BEGINNING) {
                continue;
            }
            for (int index = 0; index < changes.size(); index++) {
                Integer end = firstReached.get(track.leftAt(position - 1).then(changes.get(index)));
                if (end != null && (found == null || end <= found.to)) {
                    found = new AnnouncedBoundary(
                            position - 1, end, Orientation.ofIndex(index), Boundary.ANNOUNCED_WORDS);
                }
            }
        }
        return Optional.ofNullable(found);
    }

    /** What the words change, begun in each of the 24 holds. */
    private static List<CubeState> changes(Sequence words) {
        List<CubeState> changes = new ArrayList<>(24);
        for (Orientation hold : Orientation.all()) {
            List<Turn> turns = words.walk(hold).turns();
            changes.add(CubeState.SOLVED.apply(turns));
        }
        return changes;
    }
}
