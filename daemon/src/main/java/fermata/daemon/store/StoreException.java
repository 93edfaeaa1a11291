package fermata.daemon.store;

import java.util.Objects;

/** The store could not do what was asked; nothing of the request was kept. The message is meant for people. */
public final class StoreException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final StoreFault fault;

    /**
     * @param fault the class of the failure
     * @param message what failed, where and what to do
     */
    public StoreException(StoreFault fault, String message) {
        this(fault, message, null);
    }

    /**
     * @param cause what it came from; its message is part of {@code message} where it helps
     */
    public StoreException(StoreFault fault, String message, Throwable cause) {
        super(message, cause);
        this.fault = Objects.requireNonNull(fault, "fault");
    }

    /** The class of the failure. */
    public StoreFault fault() {
        return fault;
    }
}
