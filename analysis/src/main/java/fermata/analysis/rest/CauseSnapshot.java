package fermata.analysis.rest;

import fermata.analysis.rhythm.SnapshotId;
import fermata.analysis.statistics.LogNormal;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * How long each cause holds this solver up and how often it takes part, frozen. Equal values have equal ids.
 *
 * @param lengths by {@link Cause}, microseconds
 * @param presences by {@link Circumstance}: how likely the cause takes part in a rest there
 */
public record CauseSnapshot(List<LogNormal> lengths, List<Double> presences) {
    public CauseSnapshot {
        lengths = List.copyOf(lengths);
        presences = List.copyOf(presences);
        if (lengths.size() != Cause.values().length || presences.size() != Circumstance.values().length) {
            throw new IllegalArgumentException(lengths.size() + " lengths and " + presences.size()
                    + " presences; one for each cause and circumstance needed");
        }
        if (presences.stream().anyMatch(presence -> !(presence > 0 && presence < 1))) {
            throw new IllegalArgumentException("presences " + presences + " are not all inside 0..1");
        }
    }

    /**
     * Where everybody begins. The medians are the middles of ranges that are common practice at about 20 s a solve, no
     * source: a pair 0.3 to 1.2 s, a case 0.4 to 1.2 s, a rotation 0.2 to 0.5 s, a regrip 0.1 to 0.3 s; the others are
     * our own guesses.
     */
    public static CauseSnapshot coldStart() {
        double[] millis = {600, 650, 300, 170, 300, 500, 400};
        double[] spreads = {0.45, 0.4, 0.4, 0.4, 0.45, 0.6, 0.8};
        LogNormal[] lengths = new LogNormal[millis.length];
        Arrays.setAll(lengths, cause -> new LogNormal(Math.log(millis[cause] * 1000), spreads[cause]));
        return new CauseSnapshot(
                List.of(lengths),
                Arrays.stream(Circumstance.values())
                        .map(Circumstance::coldStart)
                        .toList());
    }

    LogNormal length(Cause cause) {
        return lengths.get(cause.ordinal());
    }

    double presence(Circumstance circumstance) {
        return presences.get(circumstance.ordinal());
    }

    /** Twelve hexadecimal digits of a SHA-256 over the values. */
    public String id() {
        return SnapshotId.of(DoubleStream.concat(
                lengths.stream().flatMapToDouble(length -> DoubleStream.of(length.mu(), length.sigma())),
                presences.stream().mapToDouble(Double::doubleValue)));
    }
}
