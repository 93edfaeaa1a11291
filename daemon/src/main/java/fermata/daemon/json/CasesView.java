package fermata.daemon.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;

/**
 * The table of the cases that were met, as {@code cases --json} prints it; docs/formats.md says what each member means.
 *
 * @param from null, as are {@code to} and {@code series}, while there is no practice
 * @param cases dearest first, then those met too rarely to say what they cost, most first
 */
public record CasesView(String over, String from, String to, NightView.Series series, int solves, List<Case> cases) {
    /** One case as this solver does it. */
    public record Case(
            String stage,
            @JsonProperty("case") String caseName,
            String picture,
            int met,
            boolean few,
            long recognitionUs,
            long executionUs,
            double turnsPerSecond,
            String sequence,
            long usualUs,
            long costUs,
            List<NightView.Example> examples) {}
}
