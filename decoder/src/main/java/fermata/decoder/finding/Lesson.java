package fermata.decoder.finding;

import fermata.decoder.cube.Turn;
import fermata.decoder.prompt.Prompt;
import fermata.decoder.prompt.PromptStep.Pace;
import fermata.decoder.prompt.PromptStep.TurnFaces;
import fermata.decoder.prompt.PromptedRecording;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the prompts say about the frames of a group. Only the first two thirds of the prompts are learned from. */
final class Lesson {
    /** A turn that was asked for with a pause, and the last frame that came before the next prompt. */
    record Example(Turn asked, Heard frame) {}

    private final PromptedRecording recording;
    private final int learned;

    Lesson(PromptedRecording recording) {
        this.recording = recording;
        this.learned = recording.prompts().size() * 2 / 3;
    }

    /** First prompt that nothing is learned from. */
    int firstProof() {
        return learned;
    }

    /** The frames that came while prompts were shown that are learned from. */
    List<Heard> learned(List<Heard> frames) {
        return frames.stream().filter(frame -> frame.prompt() < learned).toList();
    }

    /** Single turns, each with the last frame of its window. */
    List<Example> singles(List<Heard> frames) {
        return examples(frames, Pace.SINGLE);
    }

    /** Half turns that came as one frame, by the first of their quarters. */
    List<Example> halves(List<Heard> frames) {
        return examples(frames, Pace.HALF);
    }

    /** All frames of known runs, which are of quarter turns and come after the half turns. */
    List<Heard> runs(List<Heard> frames) {
        return frames.stream()
                .filter(f -> f.prompt() < learned && asked(f.prompt(), Pace.RUN).isPresent())
                .toList();
    }

    private List<Example> examples(List<Heard> frames, Pace pace) {
        List<Example> examples = new ArrayList<>();
        for (int i = 0; i < frames.size(); i++) {
            Heard frame = frames.get(i);
            boolean isLast = i + 1 == frames.size() || frames.get(i + 1).prompt() != frame.prompt();
            Optional<Turn> asked = asked(frame.prompt(), pace);
            if (isLast && frame.prompt() < learned && asked.isPresent()) {
                examples.add(new Example(asked.get(), frame));
            }
        }
        return examples;
    }

    private Optional<Turn> asked(int prompt, Pace pace) {
        if (prompt < 0) {
            return Optional.empty();
        }
        Prompt shown = recording.prompts().get(prompt);
        return shown.step() instanceof TurnFaces faces && faces.pace() == pace
                ? Optional.of(faces.turns().get(0))
                : Optional.empty();
    }
}
