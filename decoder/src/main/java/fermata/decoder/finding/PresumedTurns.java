package fermata.decoder.finding;

import fermata.decoder.cube.Turn;
import fermata.decoder.prompt.PromptStep;
import fermata.decoder.prompt.PromptStep.Pace;
import fermata.decoder.prompt.PromptStep.TurnFaces;
import fermata.decoder.prompt.PromptedRecording;
import fermata.decoder.stream.StreamEvent.TurnSensed;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * The turns of a drill with those put in that single prompts asked for and nothing was heard of: a lost frame, most
 * likely. Whether that is so, the closing state tells.
 *
 * @param turns as heard and as presumed
 * @param gaps before which of them some are missing still, as far as the stream tells
 * @param count how many are presumed
 */
record PresumedTurns(List<Turn> turns, Set<Integer> gaps, int count) {
    static PresumedTurns of(PromptedRecording recording, DrillReading reading) {
        List<Turn> filled = new ArrayList<>();
        Set<Integer> gaps = new TreeSet<>(Set.of(0));
        int presumed = 0;
        int next = 0;
        List<TurnSensed> heard = reading.turns();
        for (int i = 0; i < recording.prompts().size(); i++) {
            int before = next;
            while (next < heard.size() && heard.get(next).arrivalMicros() < recording.endOfPrompt(i)) {
                if (reading.gaps().contains(next)) {
                    gaps.add(filled.size());
                }
                filled.add(heard.get(next++).turn());
            }
            PromptStep step = recording.prompts().get(i).step();
            if (next == before && step instanceof TurnFaces faces && faces.pace() == Pace.SINGLE) {
                filled.addAll(faces.turns());
                presumed++;
            }
        }
        heard.subList(next, heard.size()).forEach(turn -> filled.add(turn.turn()));
        gaps.add(filled.size());
        return new PresumedTurns(filled, gaps, presumed);
    }
}
