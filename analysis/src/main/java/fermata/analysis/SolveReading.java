package fermata.analysis;

import fermata.analysis.beat.PracticedSolve;
import fermata.analysis.lookahead.JudgedRest;
import fermata.analysis.lookahead.LookAhead;
import fermata.analysis.lookahead.LookAheadFinding;
import fermata.analysis.night.SolveAccount;
import fermata.analysis.record.Provenance;
import fermata.analysis.rest.RestReader;
import fermata.analysis.rest.RestReading;
import fermata.analysis.rest.Rhythm;
import java.util.List;
import java.util.Objects;

/**
 * A solve, read in full.
 *
 * @param solve its turns, its stages and what the hand did
 * @param beats every beat with its probability to hold a rest, and the spans: doubles, slices, slips
 * @param looking what could be known before each pair or block
 * @param rests the likely rests, each judged
 * @param account what the sums over nights keep of it, with what its rests cost
 * @param provenance what derived all this
 */
public record SolveReading(
        PracticedSolve solve,
        RestReading beats,
        List<LookAheadFinding> looking,
        List<JudgedRest> rests,
        SolveAccount account,
        Provenance provenance) {
    public SolveReading {
        Objects.requireNonNull(solve, "solve");
        Objects.requireNonNull(beats, "beats");
        looking = List.copyOf(looking);
        rests = List.copyOf(rests);
        Objects.requireNonNull(account, "account");
        Objects.requireNonNull(provenance, "provenance");
    }

    static SolveReading of(PracticedSolve solve, Rhythm tonight, long marginMicros, Provenance provenance) {
        RestReading beats = RestReader.read(solve, tonight);
        List<LookAheadFinding> looking = LookAhead.read(solve, beats, marginMicros);
        return new SolveReading(
                solve,
                beats,
                looking,
                JudgedRest.of(solve.record(), beats, looking),
                SolveAccount.of(solve, beats),
                provenance);
    }
}
