package fermata.decoder.finding;

import fermata.decoder.stream.profile.FrameLayout;
import java.util.List;

/**
 * A frame of turns as far as it was found.
 *
 * @param group whose frames have it
 * @param code what the turn was found by
 * @param layout for a profile
 * @param repeatsUncounted whether frames repeat earlier turns and nothing tells how many of theirs are new
 * @param unexplained ranges of bits that move and that nothing explains
 */
record TurnsFound(
        FrameGroup group,
        CodeFound code,
        FrameLayout.Turns layout,
        boolean repeatsUncounted,
        List<String> unexplained) {}
