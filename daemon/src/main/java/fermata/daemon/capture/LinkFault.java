package fermata.daemon.capture;

/** What to do about an error on the way to the cube: every error string is put into one of these, once. */
public enum LinkFault {
    /** A passing radio or timing trouble: try again within a second or two. */
    RETRY_FAST,
    /** Something that needs time: try again with growing pauses. */
    RETRY_SLOW,
    /** The adapter hangs: power-cycle it, then try again. */
    RESET_ADAPTER,
    /** Nobody but a human can mend it (no adapter, soft-blocked radio, missing permission, broken bond). */
    ASK_HUMAN,
    /** The request itself was wrong, our fault and not the radio's: say so, and try again with growing pauses. */
    BUG
}
