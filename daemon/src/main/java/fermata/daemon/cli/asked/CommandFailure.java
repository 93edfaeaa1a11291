package fermata.daemon.cli.asked;

/** A command cannot do what was asked; the message says what, where and what to do. Ends with exit code 2. */
public final class CommandFailure extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public CommandFailure(String message) {
        super(message);
    }

    public CommandFailure(String message, Throwable cause) {
        super(message, cause);
    }
}
