package fermata.daemon.fakebluez;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.OpenLayout;
import fermata.decoder.stream.OpenLayout.MadeTurn;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;

/** A cube that is turned, whether anybody listens or not. Guarded by whoever owns it. */
final class FakeCube {
    private final ArrayDeque<MadeTurn> recent = new ArrayDeque<>();
    private final RandomGenerator random;
    private long sequence;
    private CubeState state = CubeState.SOLVED;

    FakeCube(RandomGenerator random) {
        this.random = random;
    }

    /** Turns a face, and gives the frame that tells it. */
    byte[] turn(long deviceMillis) {
        MadeTurn made = new MadeTurn(Turn.ofIndex(random.nextInt(18)), deviceMillis);
        sequence++;
        state = state.apply(made.turn());
        recent.addLast(made);
        if (recent.size() > OpenLayout.TURNS_A_FRAME) {
            recent.removeFirst();
        }
        List<MadeTurn> turns = new ArrayList<>(recent);
        return OpenLayout.encodeTurns(sequence, 1, turns);
    }

    byte[] state(long deviceMillis) {
        return OpenLayout.encodeState(sequence, deviceMillis, state);
    }

    int sequence() {
        return (int) sequence;
    }
}
