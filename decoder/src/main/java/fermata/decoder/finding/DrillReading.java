package fermata.decoder.finding;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.prompt.PromptedRecording;
import fermata.decoder.stream.EpochReason;
import fermata.decoder.stream.StreamDecoder;
import fermata.decoder.stream.StreamEvent;
import fermata.decoder.stream.StreamEvent.EpochStarted;
import fermata.decoder.stream.StreamEvent.FrameRejected;
import fermata.decoder.stream.StreamEvent.StateReported;
import fermata.decoder.stream.StreamEvent.TurnSensed;
import fermata.decoder.stream.StreamEvent.TurnsLost;
import fermata.decoder.stream.profile.StreamProfile;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** What a drill says when it is read by a profile, as it will be read ever after. One use. */
final class DrillReading {
    private final List<TurnSensed> turns = new ArrayList<>();
    private final Set<Integer> gaps = new TreeSet<>();
    private int lost;
    private int rejected;
    private int unknownGaps;
    private int restarts;
    private Optional<String> firstFault = Optional.empty();
    private Optional<CubeState> firstState = Optional.empty();

    DrillReading(StreamProfile profile, PromptedRecording recording) {
        new StreamDecoder(profile).accept(recording.values()).forEach(this::note);
    }

    private void note(StreamEvent event) {
        if (event instanceof TurnSensed turn) {
            turns.add(turn);
        } else if (event instanceof TurnsLost gap) {
            gaps.add(turns.size());
            lost += gap.count().orElse(0);
            unknownGaps += gap.count().isEmpty() ? 1 : 0;
        } else if (event instanceof FrameRejected frame) {
            rejected++;
            firstFault = firstFault.or(() -> Optional.of(frame.fault().message()));
        } else if (event instanceof EpochStarted epoch) {
            restarts += epoch.epoch() > 0 && epoch.reason() != EpochReason.EARLY_ARRIVAL ? 1 : 0;
        } else if (event instanceof StateReported state) {
            firstState = firstState.or(() -> Optional.of(state.state()));
        }
    }

    List<TurnSensed> turns() {
        return turns;
    }

    List<Turn> plainTurns() {
        return turns.stream().map(TurnSensed::turn).toList();
    }

    /** Before which turns some are missing, as far as the stream tells. */
    Set<Integer> gaps() {
        return gaps;
    }

    /** How many are missing there. */
    int lost() {
        return lost;
    }

    int unknownGaps() {
        return unknownGaps;
    }

    int rejected() {
        return rejected;
    }

    Optional<String> firstFault() {
        return firstFault;
    }

    int restarts() {
        return restarts;
    }

    Optional<CubeState> firstState() {
        return firstState;
    }
}
