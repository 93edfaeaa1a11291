package fermata.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.event.CaptureLog;
import fermata.analysis.event.Event;
import fermata.analysis.record.Outcome;
import fermata.analysis.record.Segment;
import fermata.decoder.cube.Span;
import fermata.rehearsal.EveningPlan;
import fermata.rehearsal.VirtualCuber;
import fermata.rehearsal.character.CuberStyle;
import fermata.rehearsal.truth.Evening;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A turn lost somewhere in an evening of which nobody announced anything changes nothing but its own solve. */
class LostTurnEveningsTest {
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void shouldFindTheSameAttemptsWhenATurnIsLostInOneOfThem(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        CuberStyle style = CuberStyle.characters().get((int) (seed % 3));
        Evening evening = new VirtualCuber(style, random.split()).evening(new EveningPlan(6, 0, 0.08, 0.3, 0.1));
        CaptureLog whole = RehearsedEvening.log(evening);
        List<Segment.Attempt> known = attempts(whole);
        List<Segment.Attempt> solved = known.stream()
                .filter(attempt -> attempt.outcome() == Outcome.SOLVED)
                .toList();
        assertThat(solved).hasSizeGreaterThan(3);
        Span hit = solved.get(random.nextInt(solved.size())).solve();
        int lost = hit.from() + 1 + random.nextInt(hit.length() - 8);

        List<Segment.Attempt> found = attempts(losing(whole, lost));

        assertThat(found)
                .extracting(attempt -> attempt.solve().to())
                .containsExactlyElementsOf(known.stream()
                        .map(attempt -> attempt.solve().to())
                        .map(to -> to > lost ? to - 1 : to)
                        .toList());
        assertThat(found)
                .extracting(Segment.Attempt::outcome)
                .containsExactlyElementsOf(
                        known.stream().map(Segment.Attempt::outcome).toList());
    }

    private static List<Segment.Attempt> attempts(CaptureLog log) {
        return PracticeAnalysis.segments(log).stream()
                .filter(Segment.Attempt.class::isInstance)
                .map(Segment.Attempt.class::cast)
                .toList();
    }

    private static CaptureLog losing(CaptureLog log, int raw) {
        List<Event> events = new ArrayList<>();
        int turns = 0;
        for (Event event : log.events()) {
            boolean isLost = event instanceof Event.Turned && turns++ == raw;
            events.add(isLost ? new Event.Gap(1, event.origin(), event.atMicros()) : event);
        }
        return new CaptureLog(log.captureId(), events);
    }
}
