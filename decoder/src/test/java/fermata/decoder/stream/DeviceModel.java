package fermata.decoder.stream;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.OpenLayout.MadeTurn;
import java.util.ArrayList;
import java.util.List;

/** A device that speaks the open layout: makes turns on its clock and frames from them. Its clock can be off. */
final class DeviceModel {
    private final List<MadeTurn> made = new ArrayList<>();
    private final long bootMicros;
    private long sequence;
    private CubeState state;

    /** Started at a moment of the board's clock, with a first sequence number. */
    DeviceModel(long bootMicros, long firstSequence, CubeState state) {
        this.bootMicros = bootMicros;
        this.sequence = firstSequence;
        this.state = state;
    }

    void turn(Turn turn, long atMicros) {
        made.add(new MadeTurn(turn, (atMicros - bootMicros) / 1000));
        sequence++;
        state = state.apply(turn);
    }

    RawFrame turns(int fresh, int connection, long arrivalMicros) {
        return new RawFrame(
                connection, OpenLayout.TURNS, arrivalMicros * 1000, OpenLayout.encodeTurns(sequence, fresh, made));
    }

    RawFrame state(int connection, long arrivalMicros) {
        byte[] value = OpenLayout.encodeState(sequence, (arrivalMicros - bootMicros) / 1000, state);
        return new RawFrame(connection, OpenLayout.STATE, arrivalMicros * 1000, value);
    }

    List<MadeTurn> made() {
        return List.copyOf(made);
    }
}
