package fermata.daemon.web;

import fermata.daemon.json.Json;
import fermata.daemon.process.OwnProcess;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Facelets;
import fermata.decoder.cube.Turn;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.locks.ReentrantLock;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Works out how a solved cube is brought to where a solve was after so many turns.
 *
 * <p>A process of its own does it, which takes the solver's tables with it when it ends; that takes a second or some.
 * One at a time: who asks meanwhile is told so, and threads are not held up. The last answers are kept. Thread-safe.
 */
final class Setups {
    private static final int HEAP_MEGABYTES = 96;
    private static final int KEPT = 64;

    private final ReentrantLock turnstile = new ReentrantLock();
    private final Map<String, String> known = new LinkedHashMap<>() {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, String> eldest) {
            return size() > KEPT;
        }
    };

    /**
     * The answer for a page: {@code id}, {@code turn} and {@code setup}, WCA notation from the solved cube.
     *
     * @param solveJson as {@code show ID --json} prints it
     * @param done so many turns of it are done
     */
    Answer answer(String solveJson, int done) {
        JsonNode solve = Json.read(solveJson);
        JsonNode turns = solve.get("turns");
        if (done > turns.size()) {
            return Answer.error(400, "turn must be in 0.." + turns.size() + ": so many turns does the solve have");
        }
        CubeState state = Facelets.read(solve.get("start_facelets").stringValue());
        for (int turn = 0; turn < done; turn++) {
            state = state.apply(Turn.parse(turns.get(turn).get("core").stringValue()));
        }
        if (!turnstile.tryLock()) {
            return Answer.error(503, "another position is being worked out; ask again in a moment");
        }
        try {
            ObjectNode document = Json.object();
            document.put("id", solve.get("id").stringValue()).put("turn", done);
            document.put("setup", known.computeIfAbsent(state.facelets(), Setups::setup));
            return Answer.json(Json.write(document));
        } finally {
            turnstile.unlock();
        }
    }

    private static String setup(String facelets) {
        return OwnProcess.run(HEAP_MEGABYTES, List.of("scramble", "--to=" + facelets))
                .strip();
    }
}
