package fermata.analysis.calibration;

import fermata.analysis.event.Event;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * The exercises of one hand, and where they were done in a stream. What needs a regrip is common practice, no source:
 * the wrist turns the free side one quarter either way from rest and no further.
 *
 * @param exercises each to be done several times, in any order and any hold
 */
public record CalibrationDrill(List<Exercise> exercises) {
    /** How often to do each. */
    public static final int TIMES = 8;

    /** The drill of a left hand. */
    public static final CalibrationDrill LEFT = new CalibrationDrill(List.of(
            Exercise.left("neither", "R U R' U R U' R' U'", Set.of()),
            Exercise.left("regrips", "R U R U R U R U", Set.of(2, 4, 6)),
            Exercise.left("rotations", "U R U' y U R U' y' U R' U'", Set.of()),
            Exercise.left("wide turns", "U r U' r' U r U' r'", Set.of())));

    /** The drill of a right hand. */
    public static final CalibrationDrill RIGHT =
            new CalibrationDrill(LEFT.exercises.stream().map(Exercise::mirrored).toList());

    public CalibrationDrill {
        exercises = List.copyOf(exercises);
    }

    /**
     * An exercise that was done.
     *
     * @param exercise which
     * @param intervalsMicros by transition, in microseconds
     */
    public record Done(Exercise exercise, List<Long> intervalsMicros) {
        public Done {
            intervalsMicros = List.copyOf(intervalsMicros);
        }
    }

    /**
     * Finds the exercises in a stream, first to last and without overlap. Turning that is none of them is passed over.
     * Cost: turns times exercises times 24.
     *
     * @param turns timed
     */
    public List<Done> find(List<Event.Turned> turns) {
        List<Done> found = new ArrayList<>();
        int at = 0;
        while (at < turns.size()) {
            Exercise exercise = at(turns, at);
            if (exercise == null) {
                at++;
            } else {
                int end = at + exercise.kinds().size() + 1;
                found.add(new Done(exercise, intervals(turns.subList(at, end))));
                at = end;
            }
        }
        return found;
    }

    private Exercise at(List<Event.Turned> turns, int from) {
        for (Exercise exercise : exercises) {
            int length = exercise.kinds().size() + 1;
            if (from + length <= turns.size()) {
                List<Turn> heard = turns.subList(from, from + length).stream()
                        .map(Event.Turned::turn)
                        .toList();
                if (Orientation.all().stream()
                        .anyMatch(hold -> exercise.turns(hold).equals(heard))) {
                    return exercise;
                }
            }
        }
        return null;
    }

    private static List<Long> intervals(List<Event.Turned> turns) {
        List<Long> micros = new ArrayList<>();
        for (int turn = 1; turn < turns.size(); turn++) {
            micros.add(
                    Math.max(0, turns.get(turn).atMicros() - turns.get(turn - 1).atMicros()));
        }
        return micros;
    }
}
