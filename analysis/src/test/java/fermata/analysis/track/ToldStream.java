package fermata.analysis.track;

import fermata.analysis.event.Event;
import fermata.analysis.event.Hand;
import fermata.analysis.event.Origin;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.TurnSource;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** A cube that turns by chance, what its stream tells of it, who follows it live, and the log that is kept. */
final class ToldStream {
    private static final Origin COOK = new Origin("galley cube", "cook", Hand.LEFT);
    private static final int TURNS = 2_000;

    final FollowedCube live = new FollowedCube();
    private final SplittableRandom random;
    private final List<Turn> made = new ArrayList<>();
    private final List<CubeState> states = new ArrayList<>();
    private final StreamOrder order = new StreamOrder();
    private final List<Event.Reference> said = new ArrayList<>();
    /** How many turns the stream has told of, heard or lost. */
    private int passed;

    private int sinceUncounted;
    private long nowMicros;

    ToldStream(long seed) {
        random = new SplittableRandom(seed);
        states.add(CubeState.SOLVED);
        for (int turn = 0; turn < TURNS; turn++) {
            made.add(Turn.ofIndex(random.nextInt(18)));
            states.add(states.get(turn).apply(made.get(turn)));
        }
    }

    /** What the cube truly was after all turns that the stream has told of. */
    CubeState truth() {
        return states.get(passed);
    }

    /** The next thing that the stream, or somebody, tells. */
    void step() {
        int what = random.nextInt(100);
        if (what < 62) {
            turn(random.nextInt(12) == 0 ? 1_500_000 : 250_000);
        } else if (what < 72) {
            lose(1 + random.nextInt(6));
        } else if (what < 75) {
            loseUncounted(random.nextInt(4));
        } else if (what < 94) {
            report(random.nextInt(18) - 11);
        } else {
            say();
        }
    }

    void turn(long afterMicros) {
        nowMicros += afterMicros;
        Event.Turned turn = new Event.Turned(made.get(passed++), TurnSource.HEARD, COOK, nowMicros);
        sinceUncounted++;
        order.turned(turn);
        follow(() -> live.turned(turn));
    }

    private void lose(int turns) {
        Event.Gap gap = new Event.Gap(turns, COOK, ++nowMicros);
        passed += turns;
        sinceUncounted += turns;
        order.lost(gap);
        follow(() -> live.lost(gap));
    }

    void loseUncounted(int turns) {
        Event.Gap gap = new Event.Gap(Event.Gap.UNKNOWN_COUNT, COOK, ++nowMicros);
        passed += turns;
        sinceUncounted = 0;
        order.lost(gap);
        follow(() -> live.lost(gap));
    }

    /** The state so many turns ahead of what was told; one from before an uncounted loss is told by wrong numbers. */
    void report(int ahead) {
        int number = Math.max(0, passed + ahead);
        CubeState state = -ahead > sinceUncounted ? states.get(number).inverse() : states.get(number);
        Event.Snapshot snapshot = new Event.Snapshot(state, COOK, ++nowMicros);
        order.reported(snapshot, ahead);
        follow(() -> live.reported(snapshot, ahead));
    }

    void say() {
        nowMicros++;
        live.solvedHere(COOK, nowMicros);
        said.add(new Event.Reference(live.reference(), COOK, nowMicros));
    }

    /** Where the reference is moved by what came, it is told to the log, as a board does. */
    private void follow(Runnable came) {
        CubeState before = live.reference();
        came.run();
        if (!live.reference().equals(before)) {
            said.add(new Event.Reference(live.reference(), COOK, nowMicros));
        }
    }

    /** Reads from its beginning the log as it is by now: what was said sorted in by its time. */
    CubeTracker readLog() {
        List<Event> events = order.settled();
        for (Event word : said) {
            int index = events.size();
            while (index > 0 && events.get(index - 1).atMicros() > word.atMicros()) {
                index--;
            }
            events.add(index, word);
        }
        CubeTracker reader = new CubeTracker();
        events.forEach(reader::take);
        return reader;
    }
}
