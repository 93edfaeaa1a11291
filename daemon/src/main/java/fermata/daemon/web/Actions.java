package fermata.daemon.web;

import fermata.daemon.json.Json;
import fermata.daemon.live.LiveFeed;
import fermata.daemon.pairing.PairingDesk;
import fermata.daemon.pairing.PairingStep;
import fermata.decoder.cube.Turn;
import java.util.Optional;
import java.util.Set;
import tools.jackson.databind.node.ObjectNode;

/** What pages may change: four things, each a POST without a body. Thread-safe. */
final class Actions {
    private static final String PAIR = "/api/pair";
    private static final String CLAIM = "/api/pair/claim";
    private static final String NEXT = "/api/now/next";
    private static final String SOLVED = "/api/now/solved";
    private static final Set<String> PATHS = Set.of(PAIR, CLAIM, NEXT, SOLVED);

    private final LiveFeed live;
    private final Optional<PairingDesk> pairing;

    Actions(LiveFeed live, Optional<PairingDesk> pairing) {
        this.live = live;
        this.pairing = pairing;
    }

    /** An answer, and the token that the browser shall keep as a cookie from now on, if any. */
    record Outcome(Answer answer, Optional<String> token) {
        static Outcome of(Answer answer) {
            return new Outcome(answer, Optional.empty());
        }
    }

    static boolean has(String path) {
        return PATHS.contains(path);
    }

    /** Whether somebody who was not paired may ask for it. */
    static boolean isForStrangers(String path) {
        return path.equals(PAIR) || path.equals(CLAIM);
    }

    /**
     * Does what is asked.
     *
     * @param browser what the browser calls itself
     * @param attempt the secret of its attempt to be paired; may be empty
     */
    Outcome act(String path, String browser, String attempt) {
        if (path.equals(NEXT)) {
            live.nextScramble();
            return Outcome.of(Answer.json("{}"));
        }
        if (path.equals(SOLVED)) {
            live.cubeIsSolved();
            return Outcome.of(Answer.json("{}"));
        }
        if (pairing.isEmpty()) {
            return Outcome.of(Answer.error(404, "nothing is paired here: the pages are served to this machine only"));
        }
        return told(
                path.equals(PAIR) ? pairing.get().begin(browser) : pairing.get().claim(attempt));
    }

    private static Outcome told(PairingStep step) {
        ObjectNode node = Json.object();
        return step.fold(
                begun -> {
                    node.put("step", "begun").put("attempt", begun.secret()).put("code", begun.code());
                    node.put("seconds", begun.seconds());
                    begun.turns().stream().map(Turn::toString).forEach(node.putArray("turns")::add);
                    return told(node);
                },
                wait -> told(node.put("step", "wait").put("seconds", wait.seconds())),
                waiting -> told(
                        node.put("step", "waiting").put("done", waiting.done()).put("seconds", waiting.seconds())),
                paired -> new Outcome(told(node.put("step", "paired")).answer(), Optional.of(paired.token())),
                failed -> told(node.put("step", "failed")));
    }

    private static Outcome told(ObjectNode node) {
        return Outcome.of(Answer.json(Json.write(node)));
    }
}
