package fermata.analysis;

import fermata.analysis.event.CaptureLog;
import fermata.analysis.event.Event;
import fermata.analysis.event.Hand;
import fermata.analysis.event.MarkKind;
import fermata.analysis.event.Origin;
import fermata.decoder.stream.TurnSource;
import fermata.rehearsal.truth.AttemptTruth;
import fermata.rehearsal.truth.Evening;
import fermata.rehearsal.truth.TimedTurn;
import java.util.ArrayList;
import java.util.List;

/** A made-up evening as a log: scrambles announced where the truth says so, nothing else told. */
final class RehearsedEvening {
    private static final Origin ORIGIN = new Origin("galley cube", "the ferry cook", Hand.LEFT);

    private RehearsedEvening() {}

    static CaptureLog log(Evening evening) {
        List<Event> events = new ArrayList<>();
        List<AttemptTruth> attempts = evening.attempts();
        int next = 0;
        for (int raw = 0; raw < evening.turns().size(); raw++) {
            TimedTurn turn = evening.turns().get(raw);
            if (next < attempts.size() && attempts.get(next).scramble().turns().from() == raw) {
                if (attempts.get(next).scramble().announced()) {
                    events.add(new Event.Mark(
                            MarkKind.SCRAMBLE, attempts.get(next).scramble().words(), ORIGIN, turn.atMicros()));
                }
                next++;
            }
            events.add(new Event.Turned(turn.turn(), TurnSource.HEARD, ORIGIN, turn.atMicros()));
        }
        return new CaptureLog("evening", events);
    }
}
