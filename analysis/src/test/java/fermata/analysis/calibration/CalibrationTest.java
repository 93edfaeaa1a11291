package fermata.analysis.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fermata.analysis.event.Event;
import fermata.analysis.event.Hand;
import fermata.analysis.event.Origin;
import fermata.analysis.event.OwnTimes;
import fermata.analysis.statistics.Interval;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;
import fermata.decoder.stream.TurnSource;
import fermata.rehearsal.character.CuberStyle;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Learns from a drill that a rehearsal cuber's pace and pauses perform: truth is what it was made with. */
class CalibrationTest {
    private static final Origin ORIGIN = new Origin("galley cube", "cook", Hand.LEFT);

    private final List<Event.Turned> stream = new ArrayList<>();
    private long now;

    /** Does every exercise some times, in all sorts of holds, with stray turns in between. */
    private List<Event.Turned> perform(CalibrationDrill drill, CuberStyle style, int times, SplittableRandom random) {
        for (int time = 0; time < times; time++) {
            for (Exercise exercise : drill.exercises()) {
                List<Turn> turns = exercise.turns(Orientation.ofIndex(random.nextInt(24)));
                for (int turn = 0; turn < turns.size(); turn++) {
                    now += turn == 0
                            ? 2_000_000
                            : interval(style, exercise.kinds().get(turn - 1), random);
                    stream.add(new Event.Turned(turns.get(turn), TurnSource.HEARD, ORIGIN, now));
                }
                now += 3_000_000;
                stream.add(new Event.Turned(Turn.parse("D2"), TurnSource.HEARD, ORIGIN, now));
            }
        }
        return stream;
    }

    private static long interval(CuberStyle style, TransitionKind kind, SplittableRandom random) {
        double motor = around(style.pace().adjacentMicros(), style.pace().spread(), random);
        double pause = switch (kind) {
            case FLUENT -> 0;
            case REGRIP -> around(style.pauses().regripMicros(), style.pauses().spread(), random);
            case ROTATION ->
                around(style.pauses().rotationMicros(), style.pauses().spread(), random);
            case WIDE -> 40_000;
        };
        return Math.round(motor + pause);
    }

    private static double around(double median, double spread, SplittableRandom random) {
        return median * Math.exp(spread * random.nextGaussian());
    }

    /** The truth by drawing a hundred thousand. */
    private static double trueMedian(CuberStyle style, TransitionKind kind) {
        SplittableRandom random = new SplittableRandom(99);
        double[] drawn = random.doubles(100_000)
                .map(any -> interval(style, kind, random))
                .sorted()
                .toArray();
        return drawn[drawn.length / 2];
    }

    @Test
    void shouldFindEveryExerciseWhateverTheHold() {
        List<CalibrationDrill.Done> done = CalibrationDrill.LEFT.find(
                perform(CalibrationDrill.LEFT, CuberStyle.cook(), 8, new SplittableRandom(1)));

        assertThat(done).hasSize(8 * CalibrationDrill.LEFT.exercises().size());
        assertThat(done.subList(0, 4))
                .extracting(one -> one.exercise().name())
                .containsExactly("neither", "regrips", "rotations", "wide turns");
    }

    @Test
    void shouldFindNoExerciseInAnother() {
        for (CalibrationDrill drill : List.of(CalibrationDrill.LEFT, CalibrationDrill.RIGHT)) {
            for (Exercise exercise : drill.exercises()) {
                for (Exercise other : drill.exercises()) {
                    String turns = exercise.turns(Orientation.IDENTITY).toString();
                    long holds = Orientation.all().stream()
                            .map(hold -> other.turns(hold).toString())
                            .filter(inner -> turns.contains(inner.substring(1, inner.length() - 1)))
                            .count();
                    assertThat(holds).as("%s in %s", other, exercise).isEqualTo(exercise == other ? 1 : 0);
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {2, 3, 4, 5, 6})
    void shouldLearnTheTimesTheDrillWasMadeWith(long seed) {
        CuberStyle style = CuberStyle.deckhand();
        Calibration learned = Calibration.learn(
                CalibrationDrill.LEFT.find(perform(CalibrationDrill.LEFT, style, 30, new SplittableRandom(seed))));

        for (TransitionKind kind : TransitionKind.values()) {
            // Some 90 to 600 intervals of log deviation 0.3: a standard error of 4 % and less.
            assertThat(learned.of(kind).medianMicros() / trueMedian(style, kind))
                    .as("%s, seed %d", kind, seed)
                    .isCloseTo(1, within(0.12));
        }
        assertThat(learned.of(TransitionKind.REGRIP).separation()).isGreaterThan(0.8);
        assertThat(learned.of(TransitionKind.ROTATION).separation())
                .isGreaterThan(learned.of(TransitionKind.WIDE).separation());
    }

    /** A 95 % interval must hold the truth in about 95 of 100 drills; 200 drills, so 0.95 give or take 0.046. */
    @Test
    void shouldHoldTheTruthInItsIntervalAsOftenAsItSays() {
        CuberStyle style = CuberStyle.cook();
        double truth = trueMedian(style, TransitionKind.FLUENT);
        int held = 0;
        for (int seed = 0; seed < 200; seed++) {
            stream.clear();
            now = 0;
            Interval interval = Calibration.learn(CalibrationDrill.LEFT.find(
                            perform(CalibrationDrill.LEFT, style, 4, new SplittableRandom(seed))))
                    .of(TransitionKind.FLUENT)
                    .medianInterval();
            held += interval.contains(truth) ? 1 : 0;
        }
        assertThat(held / 200.0).isBetween(0.90, 0.996);
    }

    @ParameterizedTest
    @EnumSource(TransitionKind.class)
    void shouldStandOnThePriorWhenNothingWasDone(TransitionKind kind) {
        Calibration.Times times = Calibration.learn(List.of()).of(kind);

        assertThat(times.count()).isZero();
        assertThat(times.medianMicros()).isCloseTo(kind.priorMicros, within(1e-6));
        assertThat(times.separation()).isEqualTo(0.5);
    }

    @Test
    void shouldShrinkLittleDataToThePrior() {
        Exercise exercise = CalibrationDrill.LEFT.exercises().get(1);
        List<Long> slow = Collections.nCopies(exercise.kinds().size(), 2_000_000L);

        double once = Calibration.learn(List.of(new CalibrationDrill.Done(exercise, slow)))
                .of(TransitionKind.REGRIP)
                .medianMicros();
        double often = Calibration.learn(Collections.nCopies(20, new CalibrationDrill.Done(exercise, slow)))
                .of(TransitionKind.REGRIP)
                .medianMicros();

        assertThat(once).isBetween(TransitionKind.REGRIP.priorMicros, 1_900_000.0);
        assertThat(often).isCloseTo(2_000_000, within(20_000.0));
    }

    @Test
    void shouldMeasureMediansThatNothingIsAddedTo() {
        Exercise regrips = CalibrationDrill.LEFT.exercises().get(1);
        List<Long> intervals = List.of(200_000L, 500_000L, 210_000L, 600_000L, 220_000L, 900_000L, 230_000L);

        OwnTimes measured = Calibration.measured(List.of(new CalibrationDrill.Done(regrips, intervals)));

        // Regrips lie before the third, fifth and seventh turn: the longer ones.
        assertThat(measured.regrip()).isEqualTo(new OwnTimes.Taken(3, 600_000));
        assertThat(measured.fluent().count()).isEqualTo(4);
        assertThat(measured.fluent().medianMicros()).isBetween(214_000L, 216_000L);
        assertThat(measured.rotation()).isEqualTo(OwnTimes.Taken.NEVER);
    }

    /** Worked by hand: of nine pairs seven are won and one is tied. */
    @Test
    void shouldCountPairsForTheArea() {
        assertThat(Calibration.area(new double[] {3, 4, 2}, new double[] {1, 2, 2.5}))
                .isCloseTo(7.5 / 9, within(1e-12));
    }

    /**
     * Hanley and McNeil's formula by hand for A = 0.85 with 40 and 30: Q1 = 0.7391304, Q2 = 0.7810811, variance
     * (0.1275 + 39 * 0.0166304 + 29 * 0.0585811) / 1200, so the standard error is 0.0456.
     */
    @Test
    void shouldGiveTheIntervalOfHanleyAndMcNeil() {
        double variance = (0.1275 + 39 * 0.0166304 + 29 * 0.0585811) / 1200;

        Interval interval = Calibration.around(0.85, 40, 30);

        assertThat(interval.low()).isCloseTo(0.85 - 1.959964 * Math.sqrt(variance), within(1e-5));
        assertThat(Calibration.around(0.85, 4, 30)).isEqualTo(new Interval(0, 1));
    }
}
