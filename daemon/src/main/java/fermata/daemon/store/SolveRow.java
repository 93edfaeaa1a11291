package fermata.daemon.store;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Objects;

/**
 * A derived solve as a list needs it.
 *
 * @param id {@code captureId-firstTurn}
 * @param captureId where its turns are
 * @param day its practice day
 * @param startedAt civil time of its first turn; of its capture, if there is no clock
 * @param firstTurn raw index of its first turn in the capture
 * @param codeVersion what derived it
 * @param snapshotId the learned parameters it used
 * @param summary its line in a list, as JSON
 */
public record SolveRow(
        String id,
        long captureId,
        LocalDate day,
        Instant startedAt,
        int firstTurn,
        String codeVersion,
        String snapshotId,
        String summary) {
    public SolveRow {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(day, "day");
        Objects.requireNonNull(startedAt, "startedAt");
        Objects.requireNonNull(codeVersion, "codeVersion");
        Objects.requireNonNull(snapshotId, "snapshotId");
        Objects.requireNonNull(summary, "summary");
    }
}
