package fermata.daemon.demo;

/** Hears how far the demo is. Called by the demo's own thread. */
public interface DemoListener {
    /** The evening is being made up. */
    void rehearsing();

    /**
     * The evening is being recorded.
     *
     * @param turnsMade turns the cube has made
     * @param turns turns of the evening
     * @param framesKept frames that are on the disk
     */
    void recording(long turnsMade, long turns, long framesKept);
}
