package fermata.daemon.cli;

/** A command cannot do what was asked; the message says what, where and what to do. Ends with exit code 2. */
final class CommandFailure extends RuntimeException {
    private static final long serialVersionUID = 1L;

    CommandFailure(String message) {
        super(message);
    }

    CommandFailure(String message, Throwable cause) {
        super(message, cause);
    }
}
