package fermata.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import fermata.analysis.attempt.LogWriter;
import fermata.analysis.beat.HandFacts;
import fermata.analysis.beat.PracticedSolve;
import fermata.analysis.event.CaptureLog;
import fermata.analysis.event.Event;
import fermata.analysis.event.Hand;
import fermata.analysis.hotspot.Loss;
import fermata.analysis.lookahead.JudgedRest;
import fermata.analysis.night.NightFigures;
import fermata.analysis.night.NightLedger;
import fermata.analysis.record.Method;
import fermata.analysis.record.Provenance;
import fermata.analysis.record.Result;
import fermata.analysis.record.Segment;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.rest.Cause;
import fermata.analysis.rest.Rhythm;
import fermata.decoder.cube.CubeState;
import fermata.decoder.notation.Sequence;
import fermata.rehearsal.EveningPlan;
import fermata.rehearsal.VirtualCuber;
import fermata.rehearsal.character.CuberStyle;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
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
        assertThat(solve.pauseMicros()).isEqualTo(9_300_000);
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
        assertThat(solve.pauseMicros()).isEqualTo(Event.NO_TIME);
        assertThat(solve.turns()).noneMatch(turn -> turn.isTimed());
        assertThat(solve.stages()).noneMatch(stage -> stage.isTimed());
        assertThat(read(solve).rests()).isEmpty();
        assertThat(read(solve).looking()).isEmpty();
        assertThat(PracticeAnalysis.learn(List.of(practiced(solve, 0)), Rhythm.coldStart()))
                .isEqualTo(Rhythm.coldStart());
        assertThat(figures(List.of(solve)).solves()).isZero();
    }

    @Test
    void shouldFindTheRestWhenOneBeatIsBeyondTheRhythm() {
        SolveRecord solve = analyse(LogWriter.timed()
                        .announce(WORDS)
                        .turn(WORDS)
                        .pause(9)
                        .undo("L2 F' D2 R2")
                        .pause(2)
                        .undo(WORDS.replace(" L2 F' D2 R2", ""))
                        .log())
                .get(0);

        List<JudgedRest> rests = read(solve).rests();

        assertThat(solve.isSolved()).isTrue();
        assertThat(rests).hasSize(1);
        assertThat(rests.get(0).rest().afterTurn()).isEqualTo(3);
        assertThat(rests.get(0).startMicros()).isEqualTo(900_000);
        assertThat(rests.get(0).rest().reading().beat().micros()).isEqualTo(2_300_000);
        assertThat(rests.get(0).isCalled()).isTrue();
    }

    @Test
    void shouldCountASlipOnceHoweverManyTurnsItHeldUp() {
        SolveRecord solve = analyse(LogWriter.timed()
                        .announce(WORDS)
                        .turn(WORDS)
                        .pause(9)
                        .undo("L2 F' D2 R2")
                        .turn("R")
                        .pause(1)
                        .turn("F")
                        .pause(1)
                        .turn("F'")
                        .pause(1)
                        .turn("R'")
                        .undo(WORDS.replace(" L2 F' D2 R2", ""))
                        .log())
                .get(0);

        SolveReading reading = read(solve);

        assertThat(reading.beats().slips()).hasSize(1);
        assertThat(reading.beats().beats().stream()
                        .filter(beat -> beat.expectedMicros(Cause.SLIP) > 300_000)
                        .count())
                .isEqualTo(3);
        List<Loss> slips = reading.account().losses().stream()
                .filter(loss -> loss.key().cause().equals(Optional.of(Cause.SLIP)))
                .toList();
        assertThat(slips).hasSize(1);
        assertThat(slips.get(0).micros()).isCloseTo(reading.beats().expectedMicros(Cause.SLIP), withinPercentage(1));
        assertThat(reading.account().losses()).isSortedAccordingTo(Comparator.comparing(Loss::afterTurn));
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
    void shouldGiveTheSameReadingsAndIdsWhenAnalysedAgain() {
        CaptureLog log = rehearsed();
        Rhythm rhythm = PracticeAnalysis.learn(practiced(log), Rhythm.coldStart());
        Rhythm same = PracticeAnalysis.learn(practiced(log), Rhythm.coldStart());

        List<SolveReading> once = readings(log, rhythm);

        assertThat(same.id())
                .isEqualTo(rhythm.id())
                .isNotEqualTo(Rhythm.coldStart().id());
        assertThat(readings(log, same)).isEqualTo(once);
        assertThat(once).allSatisfy(reading -> {
            SolveRecord solve = reading.solve().record();
            assertThat(solve.id()).isEqualTo("evening-" + solve.firstTurn());
            assertThat(reading.provenance()).isEqualTo(new Provenance(PracticeAnalysis.CODE_VERSION, rhythm.id()));
        });
    }

    @Test
    void shouldLearnNothingFromWhatWasSetAside() {
        List<PracticedSolve> solves = practiced(rehearsed());
        List<PracticedSolve> aside = solves.stream()
                .map(solve -> new PracticedSolve(setAside(solve.record()), solve.hand(), solve.solveOfNight()))
                .toList();

        assertThat(PracticeAnalysis.learn(aside, Rhythm.coldStart())).isEqualTo(Rhythm.coldStart());
    }

    @Test
    void shouldAddANightUpWhenItsSolvesAreGiven() {
        CaptureLog log = rehearsed();
        List<SolveRecord> solves = PracticeAnalysis.solves(log);
        long[] times = solves.stream()
                .filter(SolveRecord::isSolved)
                .mapToLong(SolveRecord::timeMicros)
                .toArray();

        NightFigures night = figures(solves);

        assertThat(night.solves()).isEqualTo(14).isEqualTo(times.length);
        assertThat(night.best())
                .isEqualTo(new Result.Time(Arrays.stream(times).min().orElseThrow()));
        assertThat(night.average5().best()).isInstanceOf(Result.Time.class);
        assertThat(night.trimmed12().latest()).isInstanceOf(Result.Time.class);
    }

    @Test
    void shouldSayTooFewWhenFourSolvesWereSolved() {
        CaptureLog log = rehearsed();
        List<SolveRecord> four = PracticeAnalysis.solves(log).stream()
                .filter(SolveRecord::isSolved)
                .limit(4)
                .toList();

        NightFigures night = figures(four);

        assertThat(night.average5().latest()).isEqualTo(new Result.TooFew(4, 5));
        assertThat(figures(List.of()).best()).isEqualTo(new Result.TooFew(0, 1));
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
        NightFigures night = figures(analyse(writer.log()));

        // 5.7, 6.7 and 10.7 s: mean 7.7, squares 4 + 1 + 9, over two, root of 7.
        assertThat(night.mean()).isEqualTo(new Result.Time(7_700_000));
        assertThat(night.spread()).isEqualTo(new Result.Time(2_645_751));
        assertThat(IntStream.of(night.solves(), night.abandoned())).containsExactly(3, 0);
    }

    private static CaptureLog rehearsed() {
        return RehearsedEvening.log(
                new VirtualCuber(CuberStyle.cook(), new SplittableRandom(5)).evening(EveningPlan.plain(14)));
    }

    private static List<SolveRecord> analyse(CaptureLog log) {
        return PracticeAnalysis.solves(log);
    }

    private static NightFigures figures(List<SolveRecord> solves) {
        NightLedger ledger = new NightLedger(DAY);
        solves.forEach(
                solve -> ledger.add(DAY, solve.firstTurnAtMicros(), read(solve).account()));
        return ledger.figures();
    }

    private static SolveReading read(SolveRecord solve) {
        return PracticeAnalysis.read(practiced(solve, 0), Rhythm.coldStart());
    }

    private static List<PracticedSolve> practiced(CaptureLog log) {
        List<PracticedSolve> practiced = new ArrayList<>();
        analyse(log).forEach(solve -> practiced.add(practiced(solve, practiced.size())));
        return practiced;
    }

    private static PracticedSolve practiced(SolveRecord solve, int solveOfNight) {
        return new PracticedSolve(solve, HandFacts.guess(solve, Hand.LEFT), solveOfNight);
    }

    private static List<SolveReading> readings(CaptureLog log, Rhythm rhythm) {
        return practiced(log).stream()
                .map(solve -> PracticeAnalysis.read(solve, rhythm))
                .toList();
    }

    private static SolveRecord setAside(SolveRecord solve) {
        Segment.Attempt attempt = solve.attempt();
        return new SolveRecord(
                new Segment.Attempt(
                        attempt.id(),
                        attempt.origin(),
                        attempt.scramble(),
                        attempt.solve(),
                        attempt.gaps(),
                        attempt.outcome(),
                        true,
                        true),
                solve.firstTurnAtMicros(),
                solve.timeMicros(),
                solve.pauseMicros(),
                solve.method(),
                solve.crossFaces(),
                solve.turns(),
                solve.stages());
    }
}
