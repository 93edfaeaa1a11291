package fermata.daemon.live;

import fermata.daemon.bluetooth.LinkStatus;
import java.util.Objects;

/**
 * Whether the board is listening, in words for the person at the table.
 *
 * @param listening whether turns are being heard
 * @param reason why not, in a sentence or two; empty while listening
 * @param detail what the Bluetooth service said about it, without addresses; may be empty
 */
record LinkView(boolean listening, String reason, String detail) {
    /** Nothing is being recorded. */
    static final LinkView IDLE = new LinkView(
            false, "Nothing is being recorded. On the board, fermata listen begins to listen to the cube.", "");

    LinkView {
        Objects.requireNonNull(reason, "reason");
        Objects.requireNonNull(detail, "detail");
    }

    static LinkView of(LinkStatus status) {
        String reason = switch (status.state()) {
            case LISTENING -> "";
            case WAITING_FOR_SERVICE -> "Bluetooth is not running on the board. The board goes on asking for it.";
            case SCANNING -> "The cube is not in reach or asleep. Turn a face to wake it.";
            case CONNECTING -> "The cube is there; the link is being made.";
            case HELD_IN_MEMORY ->
                "The disk of the board does not take what is heard. It waits in memory, and the disk is tried again.";
            case PAUSING -> "The link could not be made. The board will try again in a moment.";
            case STOPPED -> "The recording has ended. On the board, fermata listen begins another.";
        };
        boolean listening = status.state() == LinkStatus.State.LISTENING;
        return new LinkView(listening, reason, listening ? "" : withoutAddresses(status.detail()));
    }

    /** A device's address is for the log on the board; no page needs it. */
    private static String withoutAddresses(String text) {
        return text.replaceAll("(dev_)?[0-9A-Fa-f]{2}([:_][0-9A-Fa-f]{2}){5}", "the cube");
    }
}
