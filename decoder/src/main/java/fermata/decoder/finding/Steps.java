package fermata.decoder.finding;

import fermata.decoder.prompt.PromptStep.Pace;
import fermata.decoder.prompt.PromptStep.TurnFaces;
import fermata.decoder.prompt.PromptedRecording;
import java.util.List;
import java.util.Optional;

/**
 * Between which frames just one turn was made, as far as that is sure: by the sequence number or, without one, where
 * two single turns were asked for one after the other and each brought one frame.
 *
 * @param one for each frame, whether just one turn lies between the frame before and it
 */
record Steps(boolean[] one) {
    static Steps of(List<Heard> distinct, Optional<CounterFound> sequence, PromptedRecording recording) {
        boolean[] one = new boolean[distinct.size()];
        for (int i = 1; i < one.length; i++) {
            one[i] = sequence.isPresent()
                    ? sequence.get().step(i) == 1
                    : isLoneSingle(distinct, i, recording)
                            && isLoneSingle(distinct, i - 1, recording)
                            && distinct.get(i).prompt() == distinct.get(i - 1).prompt() + 1;
        }
        return new Steps(one);
    }

    private static boolean isLoneSingle(List<Heard> frames, int index, PromptedRecording recording) {
        int prompt = frames.get(index).prompt();
        boolean isLone = (index == 0 || frames.get(index - 1).prompt() != prompt)
                && (index + 1 == frames.size() || frames.get(index + 1).prompt() != prompt);
        return isLone
                && prompt >= 0
                && recording.prompts().get(prompt).step() instanceof TurnFaces faces
                && faces.pace() == Pace.SINGLE;
    }

    /** Whether one turn each lies between the last {@code back} frames before {@code index} and it. */
    boolean lead(int index, int back) {
        for (int i = 0; i < back; i++) {
            if (index - i < 1 || !one[index - i]) {
                return false;
            }
        }
        return true;
    }
}
