package fermata.analysis.method;

import fermata.analysis.record.StageName;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Span;
import java.util.List;
import java.util.Objects;

/**
 * A stage found in a sequence of turns, without times; see {@link fermata.analysis.record.StageRecord}.
 *
 * @param name which
 * @param caseName the case met at its beginning, {@code "skip"} or empty
 * @param span half-open, counted from the first of the turns read
 * @param faces what it is about, as core faces
 * @param parts sub-stages
 */
public record StageMark(StageName name, String caseName, Span span, List<Face> faces, List<StageMark> parts) {
    public StageMark {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(caseName, "caseName");
        Objects.requireNonNull(span, "span");
        faces = List.copyOf(faces);
        parts = List.copyOf(parts);
    }

    static StageMark plain(StageName name, int from, int to) {
        return new StageMark(name, "", new Span(from, to), List.of(), List.of());
    }
}
