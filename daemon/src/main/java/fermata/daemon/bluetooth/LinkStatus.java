package fermata.daemon.bluetooth;

import fermata.daemon.text.Visible;
import java.util.Objects;

/**
 * What the central is about, in one word and one line for people.
 *
 * @param state where it is
 * @param detail what it waits for, or what went wrong and what to do
 */
public record LinkStatus(State state, String detail) {
    /** Where the central is. */
    public enum State {
        /** No bus or no Bluetooth service. */
        WAITING_FOR_SERVICE,
        /** Looking for the cube. */
        SCANNING,
        /** Setting up the link and the subscriptions. */
        CONNECTING,
        /** Turns are being heard. */
        LISTENING,
        /** What is heard cannot be written to the disk now; it waits in memory, and the disk is tried again. */
        HELD_IN_MEMORY,
        /** Waiting before the next try. */
        PAUSING,
        /** It is over. */
        STOPPED
    }

    public LinkStatus {
        Objects.requireNonNull(state, "state");
        // What a device calls itself and what BlueZ says of it, for terminals and pages.
        detail = Visible.line(detail);
    }
}
