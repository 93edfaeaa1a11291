package fermata.analysis.method;

import fermata.analysis.record.Method;
import fermata.decoder.cube.Face;
import java.util.List;
import java.util.Objects;

/**
 * How a cube was solved.
 *
 * @param method by its states; labels of people are not asked
 * @param crossFaces the face of the cross in a list of one; empty if the method has none
 * @param stages end to end over all turns; empty if the method is none that is known
 */
public record MethodReading(Method method, List<Face> crossFaces, List<StageMark> stages) {
    public MethodReading {
        Objects.requireNonNull(method, "method");
        crossFaces = List.copyOf(crossFaces);
        stages = List.copyOf(stages);
    }
}
