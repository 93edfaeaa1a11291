package fermata.decoder.madeup;

import fermata.decoder.cube.Turn;
import fermata.decoder.prompt.PromptedRecording;
import fermata.decoder.stream.RawFrame;
import fermata.decoder.stream.profile.FrameLayout;
import java.util.List;

/**
 * A cube that nobody has built: what it is, what a drill with it sounded like, and an evening of turns.
 *
 * @param seed it is drawn from
 * @param family what sort it is
 * @param layouts of its frames, the one that tells turns first
 * @param drill with slips and losses
 * @param drilled turns that were truly made in it
 * @param evening as heard, with losses
 * @param evenly the same evening, of which nothing was lost
 * @param turned in the evening
 * @param lostTurns how many of them no frame that was heard is the first to tell
 */
public record MadeUpCube(
        long seed,
        Family family,
        List<FrameLayout> layouts,
        PromptedRecording drill,
        List<Turn> drilled,
        List<RawFrame> evening,
        List<RawFrame> evenly,
        List<Turn> turned,
        int lostTurns) {
    /** What is known of it at a glance. */
    public String describe() {
        return seed + " " + family + " " + layouts.get(0);
    }
}
