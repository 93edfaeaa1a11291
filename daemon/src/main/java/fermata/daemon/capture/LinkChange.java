package fermata.daemon.capture;

import java.util.List;
import java.util.Locale;
import java.util.Objects;

/**
 * What can change on the link. {@link #kind()} and {@link #detail()} are the two columns a journal keeps; the kinds
 * are stable.
 */
public sealed interface LinkChange {
    /** A lower-case word for the kind of change: {@code discovered}, {@code connected}, {@code resolved} ... */
    default String kind() {
        return getClass().getSimpleName().toLowerCase(Locale.ROOT);
    }

    /** The particulars in one line of text; empty when there are none. */
    String detail();

    /** A device that fits was seen, or was already known. */
    record Discovered(String address, String name) implements LinkChange {
        @Override
        public String detail() {
            return address + " " + name;
        }
    }

    /** An attempt to connect or to set up the connection failed and was classified. */
    record Refused(LinkFault fault, String error) implements LinkChange {
        public Refused {
            Objects.requireNonNull(fault, "fault");
        }

        @Override
        public String detail() {
            return fault + " " + error;
        }
    }

    /**
     * The link is up; a new connection number begins with this event. {@code adopted} says that it was up before we
     * came.
     */
    record Connected(String address, boolean adopted) implements LinkChange {
        @Override
        public String detail() {
            return address + (adopted ? " adopted" : "");
        }
    }

    /**
     * The services are known and hold every wanted characteristic.
     *
     * @param mtuBytes the link's ATT MTU, three more than the longest value that a notification can carry; or
     *     {@link #UNKNOWN_MTU}
     */
    record Resolved(int mtuBytes) implements LinkChange {
        /** The service did not tell. */
        public static final int UNKNOWN_MTU = 0;

        @Override
        public String detail() {
            return mtuBytes == UNKNOWN_MTU ? "" : "mtu " + mtuBytes;
        }
    }

    /** Notifications are on for these characteristics; frames follow. */
    record Subscribed(List<String> characteristicUuids) implements LinkChange {
        public Subscribed {
            characteristicUuids = List.copyOf(characteristicUuids);
        }

        @Override
        public String detail() {
            return String.join(" ", characteristicUuids);
        }
    }

    /** The connection is over. */
    record Lost(LossReason reason, String detail) implements LinkChange {
        public Lost {
            Objects.requireNonNull(reason, "reason");
            Objects.requireNonNull(detail, "detail");
        }

        @Override
        public String detail() {
            return reason + (detail.isEmpty() ? "" : " " + detail);
        }
    }

    /** The Bluetooth service itself came ({@code generation} counts up) or went. */
    record Service(boolean present, long generation) implements LinkChange {
        @Override
        public String detail() {
            return (present ? "present" : "gone") + " generation " + generation;
        }
    }
}
