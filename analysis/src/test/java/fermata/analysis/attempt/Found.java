package fermata.analysis.attempt;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.record.Segment;
import java.util.List;

/** The attempts among the segments that were found. */
final class Found {
    private Found() {}

    /** The one attempt in what was written. */
    static Segment.Attempt only(LogWriter writer) {
        List<Segment.Attempt> attempts = attempts(AttemptFinder.find(writer.log()));
        assertThat(attempts).hasSize(1);
        return attempts.get(0);
    }

    static List<Segment.Attempt> attempts(List<Segment> segments) {
        return segments.stream()
                .filter(Segment.Attempt.class::isInstance)
                .map(Segment.Attempt.class::cast)
                .toList();
    }
}
