package fermata.daemon.cli;

import fermata.daemon.json.ReplayView;
import fermata.daemon.reading.ProfileReplay;
import fermata.decoder.cube.Turn;
import fermata.decoder.prompt.Prompt;
import fermata.decoder.prompt.PromptStep;
import fermata.decoder.prompt.PromptedRecording;
import fermata.decoder.stream.FrameReading;
import fermata.decoder.stream.StreamEvent;
import fermata.decoder.stream.StreamEvent.TurnSensed;
import fermata.decoder.stream.StreamEvent.TurnsLost;
import fermata.decoder.stream.profile.StreamProfile;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Makes of a replayed recording what is printed of it. Stateless. */
final class ReplayedFrames {
    private ReplayedFrames() {}

    /** A recording by a profile. It is understood if no frame was rejected and a turn was heard. */
    static ReplayView of(String file, StreamProfile profile, PromptedRecording recording) {
        List<ReplayView.Frame> frames = new ArrayList<>();
        for (ProfileReplay.Frame frame : ProfileReplay.of(profile, recording)) {
            String asked = asked(recording, frame.frame().arrivalMicros());
            frames.add(frame(frames.size() + 1, asked, frame));
        }
        int turns = frames.stream().mapToInt(frame -> frame.turns().size()).sum();
        int rejected = count(frames, "rejected");
        int gaps = (int) frames.stream().filter(ReplayView.Frame::gap).count();
        return new ReplayView(
                file,
                rejected == 0 && turns > 0,
                new ReplayView.Counts(frames.size(), turns, gaps, rejected, count(frames, "left_alone")),
                frames);
    }

    private static int count(List<ReplayView.Frame> frames, String became) {
        return (int) frames.stream().filter(f -> f.became().equals(became)).count();
    }

    private static ReplayView.Frame frame(int number, String asked, ProfileReplay.Frame frame) {
        List<ReplayView.Heard> turns = new ArrayList<>();
        boolean isGap = false;
        Integer lost = null;
        for (StreamEvent event : frame.events()) {
            if (event instanceof TurnSensed turn) {
                String source = turn.source().name().toLowerCase(Locale.ROOT);
                turns.add(new ReplayView.Heard(turn.turn().toString(), source));
            } else if (event instanceof TurnsLost gap) {
                isGap = true;
                lost = gap.count().isPresent() ? gap.count().getAsInt() : null;
            }
        }
        return new ReplayView.Frame(
                number,
                frame.frame().arrivalMicros(),
                frame.frame().characteristic().toString(),
                HexFormat.of().formatHex(frame.frame().bytes()),
                asked,
                became(frame, turns),
                turns,
                isGap,
                lost,
                note(frame.reading()));
    }

    private static String became(ProfileReplay.Frame frame, List<ReplayView.Heard> turns) {
        if (frame.reading() instanceof FrameReading.Broken) {
            return "rejected";
        }
        if (frame.reading() instanceof FrameReading.Ignored) {
            return "left_alone";
        }
        if (!turns.isEmpty()) {
            return "turns";
        }
        if (frame.reading() instanceof FrameReading.OrientationFrame) {
            return "orientation";
        }
        if (frame.reading() instanceof FrameReading.BatteryFrame) {
            return "battery";
        }
        boolean isState = frame.events().stream().anyMatch(StreamEvent.StateReported.class::isInstance);
        return isState ? "state" : "nothing_new";
    }

    private static String note(FrameReading reading) {
        if (reading instanceof FrameReading.Broken broken) {
            return broken.fault().message();
        }
        return reading instanceof FrameReading.Ignored ignored ? ignored.reason() : null;
    }

    private static String asked(PromptedRecording recording, long atMicros) {
        String asked = null;
        for (Prompt prompt : recording.prompts()) {
            if (prompt.atMicros() <= atMicros) {
                asked = words(prompt.step());
            }
        }
        return asked;
    }

    private static String words(PromptStep step) {
        if (step instanceof PromptStep.TurnFaces faces) {
            return faces.turns().stream().map(Turn::toString).collect(Collectors.joining(" "));
        }
        if (step instanceof PromptStep.Tilt tilt) {
            return "tilt " + tilt.rotation();
        }
        if (step instanceof PromptStep.BeginSolved) {
            return "solved";
        }
        return step instanceof PromptStep.Rest ? "rest" : "free";
    }
}
