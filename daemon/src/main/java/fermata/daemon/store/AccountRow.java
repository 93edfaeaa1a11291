package fermata.daemon.store;

import fermata.analysis.event.Event;
import fermata.analysis.hotspot.Series;
import fermata.analysis.record.Outcome;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Objects;

/**
 * What sums over nights need of a solve, as it is kept.
 *
 * @param solveId {@code captureId-firstTurn}
 * @param day its practice day
 * @param startedAt civil time of its first turn; of its capture, if there is no clock
 * @param series what it may be compared with
 * @param outcome how it ended
 * @param timeMicros turn time, or {@link Event#NO_TIME}
 * @param json the rest of its account: see docs/data-model.md
 */
public record AccountRow(
        String solveId,
        LocalDate day,
        Instant startedAt,
        Series series,
        Outcome outcome,
        long timeMicros,
        String json) {
    public AccountRow {
        Objects.requireNonNull(solveId, "solveId");
        Objects.requireNonNull(day, "day");
        Objects.requireNonNull(startedAt, "startedAt");
        Objects.requireNonNull(series, "series");
        Objects.requireNonNull(outcome, "outcome");
        Objects.requireNonNull(json, "json");
    }

    /** Whether it counts among the times of its series. */
    public boolean isSolvedAndTimed() {
        return outcome == Outcome.SOLVED && timeMicros != Event.NO_TIME;
    }
}
