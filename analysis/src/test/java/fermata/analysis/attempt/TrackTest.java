package fermata.analysis.attempt;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.event.CaptureLog;
import fermata.analysis.event.Event;
import fermata.analysis.event.Hand;
import fermata.analysis.event.MarkKind;
import fermata.analysis.event.Origin;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import fermata.decoder.stream.TurnSource;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a log says of each position, on logs of a few turns. */
class TrackTest {
    private static final Origin COOK = new Origin("galley cube", "the ferry cook", Hand.LEFT);

    private static CubeState after(String words) {
        return Sequence.parse(words).state();
    }

    private static Track at(long... micros) {
        List<Event> events = new ArrayList<>();
        for (long at : micros) {
            events.add(new Event.Turned(Turn.parse("R"), TurnSource.HEARD, COOK, at));
        }
        return new Track(new CaptureLog("c1", events));
    }

    @Test
    void shouldMeasureAPauseBetweenTheTurnsOnItsTwoSides() {
        Track track = at(5, 1_000_005, 3_000_005);

        assertThat(track.pauseAt(0)).isZero();
        assertThat(track.pauseAt(1)).isEqualTo(1_000_000);
        assertThat(track.pauseAt(2)).isEqualTo(2_000_000);
        assertThat(track.pauseAt(3)).isZero();
        assertThat(track.isTimed()).isTrue();
    }

    @Test
    void shouldKnowNoPauseWithoutAClock() {
        Track track = at(Event.NO_TIME, Event.NO_TIME);

        assertThat(track.pauseAt(1)).isZero();
        assertThat(track.isTimed()).isFalse();
        assertThat(at().isTimed()).isFalse();
    }

    @Test
    void shouldCountTurnsOfOneFaceInARowOnce() {
        Track track = new Track(LogWriter.timed().turn("R R U U' R D D2 D").log());

        assertThat(track.runsOfOneFace(0, 8)).containsExactly(0, 1, 1, 2, 2, 3, 4, 4, 4);
        assertThat(track.runsOfOneFace(3, 6)).as("begins anew").containsExactly(0, 1, 2, 3);
    }

    @Test
    void shouldTellWhereTheTurnsLedFromWhereTheNextTurnLeft() {
        Track track = new Track(
                LogWriter.timed().turn("R").snapshot(after("F")).turn("U").log());

        assertThat(track.reachedAt(1)).isEqualTo(after("R"));
        assertThat(track.leftAt(1)).isEqualTo(after("F"));
        assertThat(track.reachedAt(2)).isEqualTo(after("F U"));
        assertThat(track.relative(2)).isEqualTo(after("F U"));
        assertThat(track.losses()).as("nobody turned that").containsExactly(new Track.Loss(1, -1, 1));
        assertThat(track.losses().get(0).turnsLost()).isEqualTo(Event.Gap.UNKNOWN_COUNT);
    }

    @Test
    void shouldSeeNoLossInAStateThatWasTrackedOrThatCameFirst() {
        assertThat(new Track(LogWriter.timed().turn("R").snapshot(after("R")).log()).losses())
                .isEmpty();
        assertThat(new Track(LogWriter.timed().snapshot(after("F")).turn("R").log()).losses())
                .isEmpty();
    }

    @Test
    void shouldExplainALossByTheNextStateOnly() {
        Track track = new Track(LogWriter.timed()
                .turn("R")
                .lose(3)
                .turn("U F")
                .snapshot(after("L"))
                .turn("D")
                .lose(4)
                .log());

        assertThat(track.losses()).containsExactly(new Track.Loss(1, 3, 3), new Track.Loss(4, 4, Track.Loss.NEVER));
        assertThat(track.losses().get(0).isAnchoredBy(3)).isTrue();
        assertThat(track.losses().get(0).isAnchoredBy(2)).isFalse();
        assertThat(track.losses().get(1).isAnchoredBy(4)).isFalse();
    }

    /** One turn was lost between R and F: where the turning stops, all since then are put right, and none before. */
    @Test
    void shouldMakeRightTheStatesSinceTheLossWhenTheTurningStops() {
        Track track = new Track(LogWriter.timed()
                .turn("R")
                .lose(1)
                .turn("F")
                .undo("R U F")
                .turn("B")
                .log());
        Track stopped = new Track(LogWriter.timed()
                .turn("R")
                .lose(1)
                .turn("F")
                .undo("R U F")
                .pause(2)
                .turn("B")
                .log());

        assertThat(track.isSolvedAt(5)).as("went on at once").isFalse();
        assertThat(stopped.reachedAt(1)).isEqualTo(after("R"));
        assertThat(stopped.leftAt(1)).isEqualTo(after("R U"));
        assertThat(stopped.reachedAt(2)).isEqualTo(after("R U F"));
        assertThat(stopped.leftAt(2)).isEqualTo(after("R U F"));
        assertThat(stopped.reachedAt(4)).isEqualTo(after("R U F F' U'"));
        assertThat(stopped.isSolvedAt(5)).isTrue();
        assertThat(stopped.turnedSolved(5)).isTrue();
        assertThat(stopped.reachedAt(6)).isEqualTo(after("B"));
        assertThat(stopped.losses()).containsExactly(new Track.Loss(1, 1, 5));
    }

    @Test
    void shouldTellATurnedSolvedCubeFromOneThatWasDeclaredSo() {
        Track track = new Track(
                LogWriter.timed().turn("R").reference(after("R")).turn("U U'").log());

        assertThat(track.turnedSolved(0)).isFalse();
        assertThat(track.isSolvedAt(0)).isTrue();
        assertThat(track.turnedSolved(1)).isFalse();
        assertThat(track.isSolvedAt(1)).isTrue();
        assertThat(track.isSolvedAt(2)).isFalse();
        assertThat(track.turnedSolved(3)).isTrue();
        assertThat(track.startOfAttempt(2, 3)).isEqualTo(after("R").inverse().then(after("R U")));
    }

    @Test
    void shouldSeparateAtEveryMarkButANote() {
        Track track = new Track(LogWriter.timed()
                .turn("R")
                .mark(MarkKind.NOTE, "the soup is on")
                .turn("U")
                .mark(MarkKind.END, "")
                .turn("F")
                .announce("R U")
                .log());

        assertThat(track.separators()).containsExactly(2, 3);
        assertThat(track.announced()).containsExactly(new Track.Announced(3, "R U"));
    }
}
