package fermata.analysis.hotspot;

import fermata.analysis.lookahead.LookAhead;
import fermata.analysis.lookahead.LookAheadFinding;
import fermata.analysis.rest.PracticedSolve;
import fermata.analysis.rest.RestReader;
import fermata.analysis.rest.RestReading;
import fermata.analysis.rest.Rhythm;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * A practice day of one {@link Series}, read in full. The lists run beside the solves.
 *
 * @param rhythm what was learned from the day, to be frozen and handed to the next
 * @param rests the rests of each solve
 * @param lookAhead what could be known before each pair of each solve
 * @param losses the losses of each solve, to be ranked over this day or many
 */
public record NightLosses(
        Rhythm rhythm, List<RestReading> rests, List<List<LookAheadFinding>> lookAhead, List<SolveLosses> losses) {
    public NightLosses {
        Objects.requireNonNull(rhythm, "rhythm");
        rests = List.copyOf(rests);
        lookAhead = List.copyOf(lookAhead);
        losses = List.copyOf(losses);
    }

    /**
     * Learns the day's rhythm and reads every solve by it. Cost: about a millisecond a solve.
     *
     * @param solves of one series, in the order of the day; without times they have no rests
     * @param yesterday the rhythm of the practice day before, or {@link Rhythm#coldStart()}
     * @param marginMicros usually {@link LookAhead#MARGIN_MICROS}
     */
    public static NightLosses read(List<PracticedSolve> solves, Rhythm yesterday, long marginMicros) {
        Rhythm rhythm = RestReader.learn(solves, yesterday);
        List<RestReading> rests =
                solves.stream().map(solve -> RestReader.read(solve, rhythm)).toList();
        List<List<LookAheadFinding>> lookAhead = new ArrayList<>();
        List<SolveLosses> losses = new ArrayList<>();
        for (int place = 0; place < solves.size(); place++) {
            lookAhead.add(LookAhead.read(solves.get(place), rests.get(place), marginMicros));
            losses.add(SolveLosses.of(solves.get(place), rests.get(place)));
        }
        return new NightLosses(rhythm, rests, lookAhead, losses);
    }
}
