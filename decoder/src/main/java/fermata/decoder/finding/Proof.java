package fermata.decoder.finding;

import java.util.List;

/**
 * What speaks for a profile, and what against it.
 *
 * @param asked turns of faces that were asked for in the part nothing was learned from
 * @param asAsked prompts there that were read as asked
 * @param prompts of turns there
 * @param turns read in the whole drill
 * @param missing turns that had to be put in to close it
 * @param doubts why it is not sound, in words for people; empty if it is
 */
public record Proof(int asked, int asAsked, int prompts, int turns, int missing, List<Doubt> doubts) {
    public Proof {
        doubts = List.copyOf(doubts);
    }

    /** Whether every turn was read right and the state closes. */
    public boolean isSound() {
        return doubts.isEmpty();
    }
}
