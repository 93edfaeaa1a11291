package fermata.daemon.live;

import java.util.function.Consumer;

/** Where pages hear what happens, and the two things they may ask for. Safe for use by many threads. */
public interface LiveFeed {
    /**
     * Tells {@code hearer} the whole state, at once and by this thread, and from then on every change in order, until
     * the returned handle is run.
     *
     * @param hearer must be quick and never wait: the capture's writer calls it
     */
    Runnable join(Consumer<LiveMessage> hearer);

    /** Puts the scramble or solve that is going on aside and asks for another scramble. */
    void nextScramble();

    /** Takes the solver's word that the cube in the hand is solved now. */
    void cubeIsSolved();

    /** Whether there is a now to show: a command listens, even if its cube is out of reach at the moment. */
    boolean isListening();

    /** A feed where nothing is recorded and nothing ever happens. */
    static LiveFeed silent() {
        return new SilentFeed();
    }
}
