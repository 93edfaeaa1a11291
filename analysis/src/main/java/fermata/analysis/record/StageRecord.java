package fermata.analysis.record;

import fermata.analysis.event.Event;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Span;
import java.util.List;
import java.util.Objects;

/**
 * A stage of a solve. The stages of a solve lie end to end over all its turns; a stage that came for nothing is empty.
 *
 * @param name which stage
 * @param caseName the case it met at its beginning ({@code "27"}, {@code "Jb"}); empty if it has none, {@code "skip"}
 *     if there was nothing to do
 * @param span half-open, in the indexes of {@link TurnRecord#index()}
 * @param startMicros when the stage before it ended, since the solve's first turn, so that the waiting before its first
 *     turn is its own; or {@link Event#NO_TIME}
 * @param endMicros when its last turn came; {@code startMicros} if it is empty; or {@link Event#NO_TIME}
 * @param faces what it is about, as core faces: the face of a cross; the two side faces of a pair, whose slot is the
 *     place between them and the cross; the face and front of a block; empty if it is about the whole cube
 * @param parts sub-stages, end to end, within {@code span}; often none
 */
public record StageRecord(
        StageName name,
        String caseName,
        Span span,
        long startMicros,
        long endMicros,
        List<Face> faces,
        List<StageRecord> parts) {
    public StageRecord {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(caseName, "caseName");
        Objects.requireNonNull(span, "span");
        faces = List.copyOf(faces);
        parts = List.copyOf(parts);
        if ((startMicros == Event.NO_TIME) != (endMicros == Event.NO_TIME)) {
            throw new IllegalArgumentException("stage " + name.written() + " has one of its two times only");
        }
    }

    /** Whether the stage has times. */
    public boolean isTimed() {
        return startMicros != Event.NO_TIME;
    }
}
