package fermata.daemon.http;

/** What came is no request that is served here; it is answered with a status, and the connection ends. */
final class BadRequest extends Exception {
    private static final long serialVersionUID = 1;

    private final int status;

    BadRequest(int status, String message) {
        super(message);
        this.status = status;
    }

    int status() {
        return status;
    }
}
