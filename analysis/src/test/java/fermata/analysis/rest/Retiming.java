package fermata.analysis.rest;

import fermata.analysis.beat.Stretch;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.record.StageName;
import fermata.analysis.record.StageRecord;
import fermata.decoder.cube.Turn;
import fermata.rehearsal.character.CuberStyle;
import fermata.rehearsal.character.Pace;
import fermata.rehearsal.character.Pauses;
import fermata.rehearsal.truth.RestCause;
import fermata.rehearsal.truth.RestTruth;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Performs a rehearsed solve once more, turn by turn the same, with times of another family. */
final class Retiming {
    private final Family family;
    private final CuberStyle style;
    private final SplittableRandom random;
    private double drift;

    /** The style may differ from the one that was rehearsed: the moves stay, its pace and pauses count. */
    Retiming(Family family, CuberStyle style, SplittableRandom random) {
        this.family = family;
        this.style = style;
        this.random = random;
    }

    /** The same moves, {@code solveOfNight} solves into an evening. */
    Performed perform(Performed solve, int solveOfNight) {
        drift = family == Family.GAMMA_WITH_DRIFT ? 0.97 * drift + 0.03 * random.nextGaussian() : 0;
        double slowness = (1 + style.pace().tiringPerSolve() * solveOfNight) * Math.exp(drift);
        SolveRecord record = solve.record();
        List<RestTruth> rests = new ArrayList<>();
        List<Long> at = new ArrayList<>(List.of(0L));
        long now = 0;
        for (int turn = 1; turn < solve.turns().size(); turn++) {
            List<RestTruth> here = rests(solve, record, turn, slowness);
            now += motor(solve, record, turn, slowness);
            now += here.stream().mapToLong(RestTruth::lengthMicros).sum();
            rests.addAll(here);
            at.add(family == Family.BATCHED ? batched(now) : now);
        }
        return new Performed(style, solveOfNight, solve.start(), solve.turns(), at, solve.facts(), rests);
    }

    private static long batched(long micros) {
        return (micros + Family.BATCH_MICROS - 1) / Family.BATCH_MICROS * Family.BATCH_MICROS;
    }

    private long motor(Performed solve, SolveRecord record, int turn, double slowness) {
        Pace pace = style.pace();
        Turn before = solve.turns().get(turn - 1);
        Turn next = solve.turns().get(turn);
        double median = before.face() == next.face()
                ? pace.sameFaceMicros()
                : before.face() == next.face().opposite() ? pace.oppositeMicros() : pace.adjacentMicros();
        StageName stage = stageAt(record, turn).name();
        boolean isKnown =
                Stretch.of(stage).isKnown() && stageAt(record, turn).span().from() != turn;
        return family.fluent(random, median * slowness * (isKnown ? pace.knownFactor() : 1), pace.spread());
    }

    private static StageRecord stageAt(SolveRecord record, int turn) {
        return record.stages().stream()
                .filter(stage -> stage.span().contains(turn))
                .findFirst()
                .orElseThrow();
    }

    /** The causes that were there stay, but for look-ahead, which comes by its own probability. */
    private List<RestTruth> rests(Performed solve, SolveRecord record, int turn, double slowness) {
        Pauses pauses = style.pauses();
        List<RestTruth> here = new ArrayList<>();
        StageRecord stage = stageAt(record, turn);
        boolean isPairStart =
                stage.span().from() == turn && Stretch.of(stage.name()).isSought();
        if (isPairStart) {
            int pair = stage.name().ordinal() - StageName.PAIR1.ordinal() + 1;
            if (random.nextDouble() < family.lookAheadProbability(pair, pauses.lookAheadProbability())) {
                here.add(drawn(turn, RestCause.LOOK_AHEAD, pauses.lookAheadMicros() * slowness));
            }
        }
        for (RestTruth rest : solve.rests()) {
            if (rest.afterTurn() == turn - 1 && rest.cause() != RestCause.LOOK_AHEAD) {
                here.add(drawn(turn, rest.cause(), median(rest, stage.name()) * slowness));
            }
        }
        return overlapped(here);
    }

    private RestTruth drawn(int turn, RestCause cause, double median) {
        return new RestTruth(
                turn - 1, family.rest(random, median, style.pauses().spread()), cause);
    }

    private double median(RestTruth rest, StageName stage) {
        Pauses pauses = style.pauses();
        return switch (rest.cause()) {
            case LOOK_AHEAD -> pauses.lookAheadMicros();
            case RECOGNITION -> Stretch.of(stage) == Stretch.ORIENT ? pauses.orientMicros() : pauses.permuteMicros();
            case ROTATION -> pauses.rotationMicros();
            case REGRIP -> pauses.regripMicros();
            case SLIP -> 260_000;
        };
    }

    /** Two causes at once take as long as the longer one; the time they share counts half to each. */
    private List<RestTruth> overlapped(List<RestTruth> here) {
        for (RestTruth look : here) {
            for (RestTruth other : here) {
                if (family.overlaps(look.cause(), other.cause())) {
                    long shared = Math.min(look.lengthMicros(), other.lengthMicros()) / 2;
                    List<RestTruth> both = new ArrayList<>(here);
                    both.replaceAll(rest -> rest == look || rest == other
                            ? new RestTruth(rest.afterTurn(), rest.lengthMicros() - shared, rest.cause())
                            : rest);
                    return both;
                }
            }
        }
        return here;
    }
}
