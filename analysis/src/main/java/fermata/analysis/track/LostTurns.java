package fermata.analysis.track;

import fermata.analysis.event.Event;
import fermata.decoder.cube.Axis;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What the cube is after turns were lost and it did not say so itself, told by where the turning stops afterwards. Two
 * things are taken for a solved cube:
 *
 * <ul>
 *   <li>As many turns as were lost, put where they were lost, would have it solved. One or two turns, or an unknown
 *       number up to two, can be put there in at most 262 ways, so by chance this comes about once in 10^17. Turns of
 *       two axes must have been heard since: along one axis the next turn would do as well.
 *   <li>It stopped in this very state before, and was mixed in between. However many turns were lost, nobody mixes a
 *       cube and brings it back to where it was but from solved to solved.
 * </ul>
 *
 * <p>Both are priors of ours, held to account on made-up evenings in the tests. Cost: a look-up where the turning
 * stops, while a loss is open. Not thread-safe.
 */
final class LostTurns {
    /** As many cubies away from home as a state must have to be taken for one after a scramble. */
    private static final int MIXED_AT_LEAST = 12;
    /** A scramble and a solve take more; a drill that is done and undone seldom does. */
    private static final int TURNS_BETWEEN_AT_LEAST = 30;

    private static final Set<CubeState> ONE = oneMoreThan(Set.of(CubeState.SOLVED));
    /** Some two turns make one, or none. */
    private static final Set<CubeState> UP_TO_TWO = oneMoreThan(ONE);

    private final CubeState before;
    private final Set<CubeState> ways;
    private final Set<Axis> axes = EnumSet.noneOf(Axis.class);
    private final List<Stop> stops = new ArrayList<>();
    private final Map<CubeState, Integer> latest = new HashMap<>();
    private int heard;

    private record Stop(CubeState state, int heard) {}

    private LostTurns(CubeState before, Set<CubeState> ways) {
        this.before = before;
        this.ways = ways;
    }

    /** One that knows the same and goes its own way from here. Cost: as many stops as there were since the loss. */
    LostTurns copy() {
        LostTurns copy = new LostTurns(before, ways);
        copy.axes.addAll(axes);
        copy.stops.addAll(stops);
        copy.latest.putAll(latest);
        copy.heard = heard;
        return copy;
    }

    /**
     * Turns lost in a known state.
     *
     * @param count how many, or {@link Event.Gap#UNKNOWN_COUNT}
     */
    static LostTurns from(CubeState before, int count) {
        return new LostTurns(
                before,
                switch (count) {
                    case 1 -> ONE;
                    case 2, Event.Gap.UNKNOWN_COUNT -> UP_TO_TWO;
                    default -> Set.of();
                });
    }

    /** Turns lost in a state that nobody knew any more. */
    static LostTurns fromUnknown() {
        return new LostTurns(CubeState.SOLVED, Set.of());
    }

    void hear(Turn turn) {
        heard++;
        axes.add(turn.face().axis());
    }

    /**
     * The turning stops. To say so again before the next turn changes nothing.
     *
     * @param tracked the state that the turns heard add up to
     * @param reference what solved is
     * @return if the cube is solved: the change that, put before all states since the loss, makes them right
     */
    Optional<CubeState> stop(CubeState tracked, CubeState reference) {
        if (!stops.isEmpty() && stops.get(stops.size() - 1).heard == heard) {
            return Optional.empty();
        }
        CubeState change = reference.then(tracked.inverse());
        boolean fits =
                axes.size() > 1 && ways.contains(before.inverse().then(change).then(before));
        Integer earlier = latest.put(tracked, stops.size());
        stops.add(new Stop(tracked, heard));
        return fits || earlier != null && isMixedSince(earlier) ? Optional.of(change) : Optional.empty();
    }

    private boolean isMixedSince(int earlier) {
        Stop then = stops.get(earlier);
        return heard - then.heard >= TURNS_BETWEEN_AT_LEAST
                && stops.subList(earlier + 1, stops.size()).stream()
                        .anyMatch(stop -> stop.state.relativeTo(then.state).misplaced() >= MIXED_AT_LEAST);
    }

    private static Set<CubeState> oneMoreThan(Set<CubeState> states) {
        Set<CubeState> more = new HashSet<>();
        for (CubeState state : states) {
            for (Turn turn : Turn.all()) {
                more.add(state.apply(turn));
            }
        }
        return Set.copyOf(more);
    }
}
