package fermata.daemon.cli;

import fermata.daemon.cli.asked.CommandFailure;
import fermata.daemon.live.LiveFeed;
import fermata.daemon.practice.Practice;
import fermata.daemon.web.Audience;
import fermata.daemon.web.PageServer;
import fermata.daemon.web.PageServerException;

/** Starts the pages on behalf of a command. Stateless. */
public final class Pages {
    private Pages() {}

    static PageServer start(Practice practice, int port) {
        return start(practice, LiveFeed.silent(), Audience.thisMachine(), port);
    }

    static PageServer start(Practice practice, LiveFeed live, Audience reach, int port) {
        try {
            return PageServer.start(practice, live, reach, port);
        } catch (PageServerException e) {
            throw new CommandFailure(e.getMessage() + " with --port", e);
        }
    }
}
