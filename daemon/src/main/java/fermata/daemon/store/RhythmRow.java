package fermata.daemon.store;

import java.time.LocalDate;
import java.util.Objects;

/**
 * What a practice day began from and what it left: frozen rhythms, and readings of last-layer sequences, by their ids.
 *
 * @param day the day
 * @param solver who; with cube and hand the series that the rhythm belongs to
 * @param cube with which cube
 * @param hand with which hand, as in a stream
 * @param beganFrom the rhythm of the series' practice day before
 * @param snapshotId the rhythm that the day taught; the same if it taught none
 * @param sequencesBefore the sequences of the practice days before, by which the day was read; empty if there were none
 * @param sequencesLeft those and the day's own
 */
public record RhythmRow(
        LocalDate day,
        String solver,
        String cube,
        String hand,
        String beganFrom,
        String snapshotId,
        String sequencesBefore,
        String sequencesLeft) {
    public RhythmRow {
        Objects.requireNonNull(day, "day");
        Objects.requireNonNull(solver, "solver");
        Objects.requireNonNull(cube, "cube");
        Objects.requireNonNull(hand, "hand");
        Objects.requireNonNull(beganFrom, "beganFrom");
        Objects.requireNonNull(snapshotId, "snapshotId");
        Objects.requireNonNull(sequencesBefore, "sequencesBefore");
        Objects.requireNonNull(sequencesLeft, "sequencesLeft");
    }
}
