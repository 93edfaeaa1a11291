package fermata.daemon.pairing;

import fermata.decoder.cube.Turn;
import java.util.List;
import java.util.function.Function;

/** Where a browser's wish to be paired is. */
public sealed interface PairingStep {
    /** What the kind makes of it: exactly one of these is asked. */
    <T> T fold(
            Function<? super Begun, ? extends T> begun,
            Function<? super Wait, ? extends T> wait,
            Function<? super Waiting, ? extends T> waiting,
            Function<? super Paired, ? extends T> paired,
            Function<? super Failed, ? extends T> failed);

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

        @Override
        public <T> T fold(
                Function<? super Begun, ? extends T> begun,
                Function<? super Wait, ? extends T> wait,
                Function<? super Waiting, ? extends T> waiting,
                Function<? super Paired, ? extends T> paired,
                Function<? super Failed, ? extends T> failed) {
            return begun.apply(this);
        }
    }

    /** Another attempt runs, or one failed a moment ago. */
    record Wait(long seconds) implements PairingStep {
        @Override
        public <T> T fold(
                Function<? super Begun, ? extends T> begun,
                Function<? super Wait, ? extends T> wait,
                Function<? super Waiting, ? extends T> waiting,
                Function<? super Paired, ? extends T> paired,
                Function<? super Failed, ? extends T> failed) {
            return wait.apply(this);
        }
    }

    /** So many of the turns were made. */
    record Waiting(int done, long seconds) implements PairingStep {
        @Override
        public <T> T fold(
                Function<? super Begun, ? extends T> begun,
                Function<? super Wait, ? extends T> wait,
                Function<? super Waiting, ? extends T> waiting,
                Function<? super Paired, ? extends T> paired,
                Function<? super Failed, ? extends T> failed) {
            return waiting.apply(this);
        }
    }

    /** Paired: the token that the browser shows from now on. */
    record Paired(String token) implements PairingStep {
        @Override
        public <T> T fold(
                Function<? super Begun, ? extends T> begun,
                Function<? super Wait, ? extends T> wait,
                Function<? super Waiting, ? extends T> waiting,
                Function<? super Paired, ? extends T> paired,
                Function<? super Failed, ? extends T> failed) {
            return paired.apply(this);
        }
    }

    /** It failed: another turn was made, or the time is over. Also for whoever never began one. */
    record Failed() implements PairingStep {
        @Override
        public <T> T fold(
                Function<? super Begun, ? extends T> begun,
                Function<? super Wait, ? extends T> wait,
                Function<? super Waiting, ? extends T> waiting,
                Function<? super Paired, ? extends T> paired,
                Function<? super Failed, ? extends T> failed) {
            return failed.apply(this);
        }
    }
}
