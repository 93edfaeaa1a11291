package fermata.daemon.live;

import fermata.decoder.cube.Turn;

/** Hears every turn of the running capture. Called by the capture's writer: must be quick and never wait. */
public interface TurnHearer {
    /** A turn in the core frame, and when it was heard by the board's monotonic clock. */
    void turned(Turn turn, long arrivalMicros);

    /** Turns were lost. */
    void lost();
}
