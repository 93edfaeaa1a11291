package fermata.daemon.bluetooth;

import fermata.daemon.capture.LinkFault;
import java.util.Objects;

/** Something on the way to the cube failed, and what to do about it. Caught once, by the central's loop. */
final class LinkException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final LinkFault fault;

    LinkException(LinkFault fault, String message) {
        super(message);
        this.fault = Objects.requireNonNull(fault, "fault");
    }

    LinkException(LinkFault fault, String message, Throwable cause) {
        super(message, cause);
        this.fault = Objects.requireNonNull(fault, "fault");
    }

    LinkFault fault() {
        return fault;
    }
}
