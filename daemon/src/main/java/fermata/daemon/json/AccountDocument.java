package fermata.daemon.json;

import com.fasterxml.jackson.annotation.JsonFormat;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import java.util.Map;

/**
 * What is kept of a solve for the sums over nights, beside its columns; docs/data-model.md says what each member means.
 * What comes by the dozen is written as arrays, in the order of its members.
 */
public record AccountDocument(
        int turns,
        double regrips,
        Map<String, Long> stagesUs,
        List<Place> losses,
        List<Case> cases,
        List<Turned> sequences) {
    /** A turn before which time was lost: the turn before and when it came, both stages, case and hold. */
    @JsonFormat(shape = JsonFormat.Shape.ARRAY)
    public record Place(
            int afterTurn,
            long atUs,
            String before,
            String after,
            @JsonProperty("case") String caseName,
            String hold,
            List<Part> parts) {}

    /** A cause's part: expected microseconds, and in thousandths how likely it is a rest with this cause in it. */
    @JsonFormat(shape = JsonFormat.Shape.ARRAY)
    public record Part(String cause, long us, int clarity) {}

    /** A case as it was done. */
    @JsonFormat(shape = JsonFormat.Shape.ARRAY)
    public record Case(
            String stage,
            @JsonProperty("case") String caseName,
            long recognitionUs,
            long executionUs,
            double turnsPerSecond,
            String sequence,
            long atUs) {}

    /** A last-layer sequence as it was read, and in thousandths how likely it was turned so. */
    @JsonFormat(shape = JsonFormat.Shape.ARRAY)
    public record Turned(String words, int p) {}
}
