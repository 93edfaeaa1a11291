package fermata.daemon.live;

import fermata.daemon.json.Json;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.Consumer;
import tools.jackson.databind.node.ObjectNode;

/** Nothing is recorded. Stateless. */
final class SilentFeed implements LiveFeed {
    @Override
    public Runnable join(Consumer<LiveMessage> hearer) {
        ObjectNode node = Json.object();
        node.put("now_us", 0).set("link", LiveJson.link(LinkView.IDLE, OptionalInt.empty(), List.of()));
        node.putNull("colours").putNull("cube").putNull("evening").putNull("turns");
        hearer.accept(new LiveMessage("state", Json.write(node)));
        return () -> {};
    }

    @Override
    public boolean isListening() {
        return false;
    }

    @Override
    public void nextScramble() {
        // Without a capture there is nothing to put aside.
    }

    @Override
    public void cubeIsSolved() {
        // Without a capture there is no cube.
    }
}
