package fermata.daemon.cli;

import fermata.daemon.practice.Practice;
import fermata.daemon.web.PageServer;
import fermata.daemon.web.PageServerException;

/** Starts the pages on behalf of a command. Stateless. */
final class Pages {
    private Pages() {}

    static PageServer start(Practice practice, int port) {
        try {
            return PageServer.start(practice, port);
        } catch (PageServerException e) {
            throw new CommandFailure(e.getMessage() + " with --port", e);
        }
    }
}
