package fermata.daemon.pairing;

import fermata.decoder.cube.Turn;
import java.util.List;

/** Where a browser's wish to be paired is. */
public sealed interface PairingStep {
    /**
     * The browser may show this.
     *
     * @param secret names the attempt; only the browser that began it knows it
     * @param turns to be made on the cube
     * @param code to be typed on the board instead
     * @param seconds how long it counts
     */
    record Begun(String secret, List<Turn> turns, String code, long seconds) implements PairingStep {
        public Begun {
            turns = List.copyOf(turns);
        }
    }

    /** Another attempt runs, or one failed a moment ago. */
    record Wait(long seconds) implements PairingStep {}

    /** So many of the turns were made. */
    record Waiting(int done, long seconds) implements PairingStep {}

    /** Paired: the token that the browser shows from now on. */
    record Paired(String token) implements PairingStep {}

    /** It failed: another turn was made, or the time is over. Also for whoever never began one. */
    record Failed() implements PairingStep {}
}
