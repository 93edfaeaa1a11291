package fermata.decoder.finding;

import fermata.decoder.cube.Turn;
import fermata.decoder.prompt.Prompt;
import fermata.decoder.prompt.PromptStep.Free;
import fermata.decoder.prompt.PromptStep.Pace;
import fermata.decoder.prompt.PromptStep.TurnFaces;
import fermata.decoder.prompt.PromptedRecording;
import fermata.decoder.stream.StreamEvent.TurnSensed;
import fermata.decoder.stream.profile.FrameLayout;
import fermata.decoder.stream.profile.StreamProfile;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;

/**
 * Proves a profile on the drill: read by it, the prompts that nothing was learned from must say what was asked, but for
 * slips, and all turns together must lead from solved to solved. Frames that were lost may leave turns out, but where
 * the stream numbers its turns only there. One use.
 */
final class Prover {
    /** A slip in thirty prompts, a lost frame in a hundred and a late hand: of 44, rarely more than six. */
    private static final double LEAST_AS_ASKED = 0.75;

    private static final int MOST_MISSING_ANYWHERE = 3;
    private static final int MOST_MISSING_AT_GAPS = 4;

    private final PromptedRecording recording;
    private final StreamProfile profile;
    private final int firstProof;
    private final DrillReading reading;
    private final List<Doubt> doubts = new ArrayList<>();
    private int asked;
    private int asAsked;
    private int prompts;

    Prover(StreamProfile profile, PromptedRecording recording, int firstProof) {
        this.recording = recording;
        this.profile = profile;
        this.firstProof = firstProof;
        this.reading = new DrillReading(profile, recording);
    }

    Proof prove() {
        reading.firstFault()
                .ifPresent(fault -> doubts.add(new Doubt(
                        "frame",
                        reading.rejected() + " frames could not be read, the first because " + fault,
                        "Turn what was turned when it came, a few times more.")));
        if (reading.restarts() + reading.unknownGaps() > 0) {
            doubts.add(new Doubt(
                    hasSequence() ? "sequence or clock" : "clock",
                    "the device would seem to have started anew " + (reading.restarts() + reading.unknownGaps())
                            + " times within the drill",
                    "Do the drill again without a break."));
        }
        comparePrompts();
        int missing = close();
        return new Proof(asked, asAsked, prompts, reading.turns().size(), missing, doubts);
    }

    private void comparePrompts() {
        int next = 0;
        List<TurnSensed> turns = reading.turns();
        for (int i = 0; i < recording.prompts().size(); i++) {
            List<Turn> made = new ArrayList<>();
            while (next < turns.size() && turns.get(next).arrivalMicros() < recording.endOfPrompt(i)) {
                made.add(turns.get(next++).turn());
            }
            Prompt prompt = recording.prompts().get(i);
            if (i >= firstProof && prompt.step() instanceof TurnFaces faces) {
                prompts++;
                asked += faces.turns().size();
                asAsked += isAsAsked(faces, made) ? 1 : 0;
            }
        }
        if (prompts == 0 || asAsked < LEAST_AS_ASKED * prompts) {
            doubts.add(new Doubt(
                    "code",
                    "of " + prompts + " prompts that nothing was learned from, " + asAsked + " were read as asked",
                    "Do the drill again, slowly."));
        }
    }

    private static boolean isAsAsked(TurnFaces faces, List<Turn> made) {
        Turn first = faces.turns().get(0);
        boolean isHalf = faces.pace() == Pace.HALF && made.equals(List.of(Turn.of(first.face(), 2)));
        return isHalf || made.equals(faces.turns());
    }

    private boolean hasSequence() {
        return profile.subscribe().stream()
                .flatMap(s -> s.frames().stream())
                .anyMatch(f ->
                        f instanceof FrameLayout.Turns turns && turns.sequence().isPresent());
    }

    /** The turns that had to be put in. */
    private int close() {
        boolean endsFree =
                recording.prompts().get(recording.prompts().size() - 1).step() instanceof Free;
        if (!endsFree) {
            doubts.add(new Doubt(
                    "drill",
                    "it does not end with a solve",
                    "Turn freely and solve the cube at the end of the drill."));
            return 0;
        }
        OptionalInt missing = hasSequence() ? closeAtGaps() : closeAnywhere();
        if (missing.isEmpty()) {
            doubts.add(new Doubt(
                    "turns",
                    "all turns together do not lead from solved to solved",
                    "Do the last part again, near the board: begin solved, turn freely, solve it."));
        }
        return missing.orElse(0);
    }

    private OptionalInt closeAtGaps() {
        Set<Integer> places = new TreeSet<>(reading.gaps());
        // A loss before the first frame or after the last shows in no number.
        places.add(0);
        places.add(reading.turns().size());
        OptionalInt asRead = ClosingTurns.missing(reading.plainTurns(), places, MOST_MISSING_AT_GAPS);
        if (asRead.isPresent()) {
            return asRead;
        }
        PresumedTurns presumed = PresumedTurns.of(recording, reading);
        OptionalInt missing = ClosingTurns.missing(presumed.turns(), presumed.gaps(), MOST_MISSING_AT_GAPS);
        return missing.isPresent() ? OptionalInt.of(missing.getAsInt() + presumed.count()) : missing;
    }

    private OptionalInt closeAnywhere() {
        List<Turn> turns = reading.plainTurns();
        OptionalInt asRead = ClosingTurns.missing(turns, everywhere(turns), 2);
        if (asRead.isPresent()) {
            return asRead;
        }
        PresumedTurns presumed = PresumedTurns.of(recording, reading);
        OptionalInt missing =
                ClosingTurns.missing(presumed.turns(), everywhere(presumed.turns()), MOST_MISSING_ANYWHERE);
        return missing.isPresent() ? OptionalInt.of(missing.getAsInt() + presumed.count()) : missing;
    }

    private static Set<Integer> everywhere(List<Turn> turns) {
        Set<Integer> places = new TreeSet<>();
        for (int i = 0; i <= turns.size(); i++) {
            places.add(i);
        }
        return places;
    }
}
