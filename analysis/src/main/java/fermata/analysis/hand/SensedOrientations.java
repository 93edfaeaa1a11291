package fermata.analysis.hand;

import fermata.analysis.event.CaptureLog;
import fermata.analysis.event.Event;
import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.hold.sensor.OrientationEvidence;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Quaternion;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * How the core of a capture's cube lay, from moment to moment. Immutable, thread-safe. Cost: one pass and a sort of the
 * samples when made; a binary search a turn after that.
 */
public final class SensedOrientations {
    /** Nothing sensed. */
    public static final SensedOrientations NONE = new SensedOrientations(List.of());

    /** A sample farther from a turn than this says little about it: a hand has turned the cube by then. */
    private static final long FAR_MICROS = 250_000;

    private final long[] micros;
    private final Quaternion[] attitudes;

    private SensedOrientations(List<Event.Oriented> samples) {
        List<Event.Oriented> sorted = samples.stream()
                .sorted(Comparator.comparingLong(Event.Oriented::atMicros))
                .toList();
        this.micros = sorted.stream().mapToLong(Event.Oriented::atMicros).toArray();
        this.attitudes = sorted.stream().map(Event.Oriented::attitude).toArray(Quaternion[]::new);
    }

    /** What a capture's log holds. */
    public static SensedOrientations of(CaptureLog log) {
        List<Event.Oriented> samples = log.events().stream()
                .filter(Event.Oriented.class::isInstance)
                .map(Event.Oriented.class::cast)
                .toList();
        return samples.isEmpty() ? NONE : new SensedOrientations(samples);
    }

    /** Evidence for the holds of turns made at these times. */
    HoldEvidence evidence(List<Turn> turns, long[] turnMicros) {
        return OrientationEvidence.of(
                turns, turnMicros, Arrays.stream(turnMicros).mapToObj(this::at).toList());
    }

    /** Between the samples around it, on the shortest way; empty if neither is near: a resting cube sends none. */
    Optional<Quaternion> at(long moment) {
        int found = Arrays.binarySearch(micros, moment);
        int after = found >= 0 ? found : -found - 1;
        boolean hasBefore = after > 0 && moment - micros[after - 1] <= FAR_MICROS;
        boolean hasAfter = after < micros.length && micros[after] - moment <= FAR_MICROS;
        if (hasBefore && hasAfter) {
            double share = (double) (moment - micros[after - 1]) / Math.max(1, micros[after] - micros[after - 1]);
            return Optional.of(unit(attitudes[after - 1]).towards(unit(attitudes[after]), share));
        }
        return hasAfter
                ? Optional.of(unit(attitudes[after]))
                : hasBefore ? Optional.of(unit(attitudes[after - 1])) : Optional.empty();
    }

    private static Quaternion unit(Quaternion rounded) {
        return Quaternion.scaled(rounded.w(), rounded.x(), rounded.y(), rounded.z());
    }
}
