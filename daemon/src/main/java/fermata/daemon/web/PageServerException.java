package fermata.daemon.web;

/** The pages cannot be served; the message says why and what to do. */
public final class PageServerException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    PageServerException(String message, Throwable cause) {
        super(message, cause);
    }
}
