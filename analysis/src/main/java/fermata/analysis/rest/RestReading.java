package fermata.analysis.rest;

import fermata.analysis.beat.TurnSpan;
import java.util.List;
import java.util.Objects;

/**
 * The rests of a solve.
 *
 * @param solveId {@link fermata.analysis.record.SolveRecord#id()}
 * @param beats every beat, explained as if it were a rest: its probability says how likely it is
 * @param spans doubles, slices, slips
 * @param rhythmId the rhythm's snapshot
 * @param causesId the causes' snapshot
 */
public record RestReading(
        String solveId, List<ExplainedRest> beats, List<TurnSpan> spans, String rhythmId, String causesId) {
    public RestReading {
        Objects.requireNonNull(solveId, "solveId");
        beats = List.copyOf(beats);
        spans = List.copyOf(spans);
        Objects.requireNonNull(rhythmId, "rhythmId");
        Objects.requireNonNull(causesId, "causesId");
    }

    /** Each a finding of its own. */
    public List<TurnSpan> slips() {
        return spans.stream().filter(span -> span.kind() == TurnSpan.Kind.SLIP).toList();
    }

    /** Microseconds that a cause is expected to have cost. */
    public double expectedMicros(Cause cause) {
        return beats.stream().mapToDouble(beat -> beat.expectedMicros(cause)).sum();
    }
}
