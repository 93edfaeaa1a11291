package fermata.analysis.rest;

import fermata.analysis.beat.Beat;
import fermata.analysis.beat.PracticedSolve;
import fermata.analysis.beat.Timeline;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.rhythm.RestFit;
import fermata.analysis.rhythm.RestSnapshot;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads the rests of solves by a frozen rhythm, and learns tonight's rhythm from tonight's solves and yesterday's
 * rhythm. Pure; thread-safe.
 */
public final class RestReader {
    private RestReader() {}

    /**
     * Tonight's rhythm.
     *
     * <p>Cost: at most {@value RestFit#MOST_STEPS} passes over the night's beats, then a few over its likely rests;
     * some 0.1 s for 50 solves.
     *
     * @param night every timed solve of the practice day by one solver, hand and cube
     * @param yesterday the rhythm of the practice day before, or {@link Rhythm#coldStart()}
     */
    public static Rhythm learn(List<PracticedSolve> night, Rhythm yesterday) {
        List<Beat> beats = new ArrayList<>();
        List<Timeline> timelines = night.stream().map(Timeline::of).toList();
        for (int place = 0; place < night.size(); place++) {
            beats.addAll(timelines.get(place).beats(night.get(place).solveOfNight()));
        }
        RestSnapshot rhythm = RestFit.learn(beats, yesterday.beats());
        List<Suspected> suspected = new ArrayList<>();
        for (int place = 0; place < night.size(); place++) {
            suspected.addAll(suspect(night.get(place), timelines.get(place), rhythm));
        }
        return new Rhythm(rhythm, CauseFit.learn(suspected, yesterday.causes()));
    }

    /** The rests of a solve. Cost: linear in its turns, 2^6 sets of causes a beat at most. */
    public static RestReading read(PracticedSolve solve, Rhythm rhythm) {
        Timeline timeline = Timeline.of(solve);
        List<ExplainedRest> beats = suspect(solve, timeline, rhythm.beats()).stream()
                .map(beat -> new ExplainedRest(
                        beat.reading(), beat.sharing(rhythm.causes()).shares()))
                .toList();
        SolveRecord record = solve.record();
        return new RestReading(
                record.id(),
                beats,
                timeline.spans(),
                rhythm.beats().id(),
                rhythm.causes().id());
    }

    private static List<Suspected> suspect(PracticedSolve solve, Timeline timeline, RestSnapshot rhythm) {
        Suspicions suspicions = new Suspicions(timeline, solve.record().turns());
        return timeline.beats(solve.solveOfNight()).stream()
                .map(beat -> new Suspected(rhythm.read(beat), suspicions.before(beat.afterTurn() + 1)))
                .toList();
    }
}
