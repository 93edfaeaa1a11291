package fermata.daemon.json;

import java.util.List;

/** A solver's sequences as {@code sequences --json} prints them; docs/formats.md says what each member means. */
public record SequencesView(String solver, List<String> typed, List<Learned> learned) {
    public SequencesView {
        typed = List.copyOf(typed);
        learned = List.copyOf(learned);
    }

    /** A last layer of a solve of which the solver said what the hand did. */
    public record Learned(String solve, String words) {}
}
