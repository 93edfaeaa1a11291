package fermata.daemon.json;

import java.util.List;

/** A solver's sequences as {@code sequences --json} prints them; docs/formats.md says what each member means. */
public record SequencesView(String solver, List<String> typed, List<Learned> learned, List<Repeated> repeated) {
    public SequencesView {
        typed = List.copyOf(typed);
        learned = List.copyOf(learned);
        repeated = List.copyOf(repeated);
    }

    /** A last layer of a solve of which the solver said what the hand did. */
    public record Learned(String solve, String words) {}

    /** What solves that nobody set right repeat, as it was read. */
    public record Repeated(String cube, String hand, String words, int seen, int alike, double p, boolean sure) {}
}
