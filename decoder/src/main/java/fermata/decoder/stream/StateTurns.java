package fermata.decoder.stream;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.FrameReading.StateFrame;
import fermata.decoder.stream.FrameReading.TurnsFrame;
import fermata.decoder.stream.StreamEvent.TurnSensed;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * Turns of a device that sends nothing but its whole state: what lies between one state and the next, where that is
 * certain. Feeds {@link TurnRepair}, which knows about clocks and connections. Not thread-safe.
 */
final class StateTurns {
    private final TurnRepair repair;
    private Optional<CubeState> last = Optional.empty();

    StateTurns(TurnRepair repair) {
        this.repair = repair;
    }

    /** What a state adds to the story: nothing if it is the last one again. */
    List<StreamEvent> accept(RawFrame frame, StateFrame reading) {
        Optional<CubeState> before = last;
        last = Optional.of(reading.state());
        if (before.isEmpty()) {
            return repair.accept(frame, reading);
        }
        Optional<List<Turn>> turns = StateDifference.between(before.get(), reading.state());
        if (turns.isEmpty()) {
            List<StreamEvent> events = new ArrayList<>(repair.lose(frame));
            events.addAll(repair.accept(frame, reading));
            return List.copyOf(events);
        }
        if (turns.get().isEmpty()) {
            return repair.repeat(frame);
        }
        return repair.accept(frame, asFrame(reading, turns.get())).stream()
                .map(event -> event instanceof TurnSensed turn ? withSource(turn, turns.get()) : event)
                .toList();
    }

    private static TurnsFrame asFrame(StateFrame reading, List<Turn> turns) {
        List<FrameTurn> held = new ArrayList<>();
        for (int i = 0; i < turns.size(); i++) {
            OptionalLong ticks = i == turns.size() - 1 ? reading.ticks() : OptionalLong.empty();
            held.add(new FrameTurn(turns.get(i), OptionalLong.empty(), ticks, false));
        }
        return new TurnsFrame(OptionalLong.empty(), reading.ticks(), turns.size(), held);
    }

    /** One turn, or turns of one axis, leave no doubt; what was searched for is repaired. */
    private static TurnSensed withSource(TurnSensed turn, List<Turn> turns) {
        boolean isHeard = turns.stream().allMatch(turns.get(0)::commutesWith);
        return new TurnSensed(
                turn.turn(),
                isHeard ? TurnSource.HEARD : TurnSource.REPAIRED,
                turn.deviceMicros(),
                turn.earlierByMicros(),
                turn.arrivalMicros(),
                turn.epoch());
    }
}
