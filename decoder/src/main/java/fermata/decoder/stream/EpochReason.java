package fermata.decoder.stream;

/** Why device times before and after this point are not on one line. */
public enum EpochReason {
    /** First frame, or first after a reconnect. */
    CONNECTED,
    /** The sequence number went where no loss explains it: the device restarted. */
    SEQUENCE_RESET,
    /** The device clock went back, or away from the board's by more than a late frame explains. */
    CLOCK_JUMP,
    /** A frame arrived clearly before the fitted line allows: the clock was set forward by a little. */
    EARLY_ARRIVAL
}
