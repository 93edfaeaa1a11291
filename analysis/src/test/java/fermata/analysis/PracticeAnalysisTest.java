package fermata.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.attempt.LogWriter;
import fermata.analysis.event.CaptureLog;
import fermata.analysis.event.Event;
import fermata.analysis.record.Hotspot;
import fermata.analysis.record.Method;
import fermata.analysis.record.NightRecord;
import fermata.analysis.record.Provenance;
import fermata.analysis.record.Result;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.record.StageName;
import fermata.analysis.rehearsal.CuberStyle;
import fermata.analysis.rehearsal.EveningPlan;
import fermata.analysis.rehearsal.VirtualCuber;
import fermata.analysis.rhythm.RhythmSnapshot;
import fermata.decoder.cube.CubeState;
import fermata.decoder.notation.Sequence;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class PracticeAnalysisTest {
    private static final String WORDS = "D2 F2 L2 D B2 U' B2 U B2 R2 B2 U L D' R F L2 F' D2 R2";
    private static final LocalDate DAY = LocalDate.of(2026, 11, 24);

    @Test
    void shouldTimeFirstToLastTurnAndTheGapBeforeWhenTheCaptureHasAClock() {
        SolveRecord solve = analyse(LogWriter.timed()
                        .announce(WORDS)
                        .turn(WORDS)
                        .pause(9)
                        .undo(WORDS)
                        .log())
                .get(0);

        assertThat(solve.timeMicros()).isEqualTo(19 * 300_000);
        assertThat(solve.gapMicros()).isEqualTo(9_300_000);
        assertThat(solve.firstTurnAtMicros()).isEqualTo(20 * 300_000 + 9_300_000);
        assertThat(solve.turns().get(0).atMicros()).isZero();
        assertThat(solve.turns().get(19).index()).isEqualTo(19);
        assertThat(solve.firstTurn()).isEqualTo(20);
    }

    @Test
    void shouldLeaveAllTimesOutWhenTheCaptureHasNoClock() {
        SolveRecord solve = analyse(LogWriter.untimed()
                        .snapshot(Sequence.parse(WORDS).state())
                        .announce(WORDS)
                        .undo(WORDS)
                        .log())
                .get(0);

        assertThat(solve.isSolved()).isTrue();
        assertThat(solve.timeMicros()).isEqualTo(Event.NO_TIME);
        assertThat(solve.gapMicros()).isEqualTo(Event.NO_TIME);
        assertThat(solve.turns()).noneMatch(turn -> turn.isTimed());
        assertThat(solve.stages()).noneMatch(stage -> stage.isTimed());
        assertThat(solve.rests()).isEmpty();
        assertThat(PracticeAnalysis.night(DAY, List.of(solve), RhythmSnapshot.PRIOR)
                        .solves())
                .isZero();
    }

    @Test
    void shouldFindTheRestWhenOneIntervalIsBeyondTheRhythm() {
        SolveRecord solve = analyse(LogWriter.timed()
                        .announce(WORDS)
                        .turn(WORDS)
                        .pause(9)
                        .undo("L2 F' D2 R2")
                        .pause(2)
                        .undo(WORDS.replace(" L2 F' D2 R2", ""))
                        .log())
                .get(0);

        assertThat(solve.isSolved()).isTrue();
        assertThat(solve.rests()).hasSize(1);
        assertThat(solve.rests().get(0).afterTurn()).isEqualTo(3);
        assertThat(solve.rests().get(0).startMicros()).isEqualTo(900_000);
        assertThat(solve.rests().get(0).lengthMicros()).isEqualTo(2_300_000);
    }

    @Test
    void shouldNotTellTimeOrMethodWhenTheLastTurnsWereLost() {
        SolveRecord solve = analyse(LogWriter.timed()
                        .announce(WORDS)
                        .turn(WORDS)
                        .pause(9)
                        .turn("R2 D2 F L2")
                        .lose(16)
                        .snapshot(CubeState.SOLVED)
                        .log())
                .get(0);

        assertThat(solve.isSolved()).isTrue();
        assertThat(solve.isTimed()).isFalse();
        assertThat(solve.method()).isEqualTo(Method.UNTOLD);
        assertThat(solve.stages()).isEmpty();
    }

    @Test
    void shouldGiveTheSameRecordsAndIdsWhenAnalysedAgain() {
        CaptureLog log = rehearsed();
        RhythmSnapshot rhythm = PracticeAnalysis.learn(List.of(log));

        List<SolveRecord> once = PracticeAnalysis.analyse(log, rhythm);
        List<SolveRecord> again = PracticeAnalysis.analyse(log, PracticeAnalysis.learn(List.of(log)));

        assertThat(again).isEqualTo(once);
        assertThat(once).allSatisfy(solve -> {
            assertThat(solve.id()).isEqualTo("evening-" + solve.firstTurn());
            assertThat(solve.provenance()).isEqualTo(new Provenance(PracticeAnalysis.CODE_VERSION, rhythm.id()));
        });
    }

    @Test
    void shouldAddANightUpWhenItsSolvesAreGiven() {
        CaptureLog log = rehearsed();
        RhythmSnapshot rhythm = PracticeAnalysis.learn(List.of(log));
        List<SolveRecord> solves = PracticeAnalysis.analyse(log, rhythm);
        long[] times = solves.stream()
                .filter(SolveRecord::isSolved)
                .mapToLong(SolveRecord::timeMicros)
                .toArray();

        NightRecord night = PracticeAnalysis.night(DAY, solves, rhythm);

        assertThat(night.solves()).isEqualTo(14).isEqualTo(times.length);
        assertThat(night.best())
                .isEqualTo(new Result.Time(Arrays.stream(times).min().orElseThrow()));
        assertThat(night.average5().best()).isInstanceOf(Result.Time.class);
        assertThat(night.trimmed12().latest()).isInstanceOf(Result.Time.class);
        assertThat(night.hotspots()).isSortedAccordingTo((one, other) -> Long.compare(order(one), order(other)));
        Hotspot pair = night.hotspots().stream()
                .filter(spot -> spot.before() == StageName.PAIR3 && spot.after() == StageName.PAIR4)
                .findFirst()
                .orElseThrow();
        assertThat(pair.count()).isBetween(5, 14);
    }

    @Test
    void shouldSayTooFewWhenFourChangesWereSeen() {
        CaptureLog log = rehearsed();
        List<SolveRecord> four = PracticeAnalysis.analyse(log, RhythmSnapshot.PRIOR).stream()
                .filter(SolveRecord::isSolved)
                .limit(4)
                .toList();

        NightRecord night = PracticeAnalysis.night(DAY, four, RhythmSnapshot.PRIOR);

        assertThat(night.hotspots()).allMatch(spot -> spot.typical() instanceof Result.TooFew);
        assertThat(night.average5().latest()).isEqualTo(new Result.TooFew(4, 5));
        assertThat(PracticeAnalysis.night(DAY, List.of(), RhythmSnapshot.PRIOR).best())
                .isEqualTo(new Result.TooFew(0, 1));
    }

    @Test
    void shouldAgreeWithHandWorkWhenSpreadAndMeanAreTaken() {
        LogWriter writer = LogWriter.timed();
        for (double slower : new double[] {0, 1, 5}) {
            writer.announce(WORDS)
                    .turn(WORDS)
                    .pause(9)
                    .undo("L2 F' D2 R2")
                    .pause(slower)
                    .undo(WORDS.replace(" L2 F' D2 R2", ""))
                    .pause(20);
        }
        NightRecord night = PracticeAnalysis.night(DAY, analyse(writer.log()), RhythmSnapshot.PRIOR);

        // 5.7, 6.7 and 10.7 s: mean 7.7, squares 4 + 1 + 9, over two, root of 7.
        assertThat(night.mean()).isEqualTo(new Result.Time(7_700_000));
        assertThat(night.spread()).isEqualTo(new Result.Time(2_645_751));
        assertThat(IntStream.of(night.solves(), night.abandoned())).containsExactly(3, 0);
    }

    private static long order(Hotspot spot) {
        return spot.typical() instanceof Result.Time time ? -time.micros() : 1;
    }

    private static CaptureLog rehearsed() {
        return RehearsedEvening.log(
                new VirtualCuber(CuberStyle.cook(), new SplittableRandom(5)).evening(EveningPlan.plain(14)));
    }

    private static List<SolveRecord> analyse(CaptureLog log) {
        return PracticeAnalysis.analyse(log, RhythmSnapshot.PRIOR);
    }
}
