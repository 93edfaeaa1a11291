package fermata.daemon.json;

import java.util.List;

/**
 * What became of each frame of a recording, as {@code profile check --recording --json} prints it; docs/formats.md says
 * what each member means.
 */
public record ReplayView(String recording, boolean understood, Counts counts, List<Frame> frames) {
    public ReplayView {
        frames = List.copyOf(frames);
    }

    /** How often. */
    public record Counts(int frames, int turns, int gaps, int rejected, int leftAlone) {}

    /**
     * A frame.
     *
     * @param asked what was asked for when it came, null before anything was
     * @param lost null if there is no gap before it or nobody can tell how many turns
     * @param note why it was rejected or left alone, else null
     */
    public record Frame(
            int number,
            long atUs,
            String characteristic,
            String hex,
            String asked,
            String became,
            List<Heard> turns,
            boolean gap,
            Integer lost,
            String note) {}

    /** A turn, {@code heard} or {@code repaired}. */
    public record Heard(String turn, String source) {}
}
