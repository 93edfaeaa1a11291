package fermata.daemon.practice;

import fermata.analysis.hold.sequence.LearnedSequences;
import fermata.analysis.hold.sequence.SequenceReading;
import fermata.daemon.document.SolveViews;
import fermata.daemon.holdmodel.HoldFiles;
import fermata.daemon.json.SequencesView;
import fermata.daemon.store.AccountRow;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * How the last-layer sequences of a solver's newest solves were read, so far as nobody said how they were turned.
 *
 * @param solves of each solve that has any, oldest first
 */
record RepeatedSequences(List<List<SequenceReading>> solves) {
    /** What a solver turned long ago may be turned otherwise now; and so many are read in an instant. */
    static final int MOST_SOLVES = 200;

    RepeatedSequences {
        solves = solves.stream()
                .filter(solve -> !solve.isEmpty())
                .map(List::copyOf)
                .toList();
        solves = solves.subList(Math.max(0, solves.size() - MOST_SOLVES), solves.size());
    }

    /**
     * Those of the practice days before one.
     *
     * <p>Cost: reads the accounts of {@value #MOST_SOLVES} solves.
     */
    static RepeatedSequences before(Derived derived, RhythmChain.Owner owner, LocalDate day) {
        List<AccountRow> newestFirst = new ArrayList<>(derived.readBefore(owner, day, MOST_SOLVES));
        Collections.reverse(newestFirst);
        return new RepeatedSequences(
                newestFirst.stream().map(AccountRows::sequences).toList());
    }

    /** What a solver repeats with each cube and hand, most often first, as it is listed. */
    static List<SequencesView.Repeated> listed(Derived derived, String solver) {
        Map<RhythmChain.Owner, LocalDate> newest = new LinkedHashMap<>();
        derived.rhythms().stream()
                .filter(row -> row.solver().equals(solver))
                .forEach(row -> newest.merge(
                        RhythmChain.Owner.of(row), row.day(), (one, other) -> one.isAfter(other) ? one : other));
        List<SequencesView.Repeated> listed = new ArrayList<>();
        newest.forEach((owner, day) -> before(derived, owner, day.plusDays(1))
                .learned()
                .all()
                .forEach(one -> listed.add(new SequencesView.Repeated(
                        owner.cube(),
                        owner.hand(),
                        one.words(),
                        one.seen(),
                        one.alike(),
                        SolveViews.rounded(one.probability()),
                        one.isSure()))));
        return listed;
    }

    /** These and then a day's. */
    RepeatedSequences and(List<List<SequenceReading>> day) {
        List<List<SequenceReading>> all = new ArrayList<>(solves);
        all.addAll(day);
        return new RepeatedSequences(all);
    }

    /** What they say together. */
    LearnedSequences learned() {
        return LearnedSequences.of(solves);
    }

    /** Made from all of them, in their order; empty if there is none. */
    String id() {
        return solves.isEmpty()
                ? ""
                : HoldFiles.id(solves.stream()
                        .map(solve -> solve.stream()
                                .map(reading -> reading.words() + " " + reading.probability())
                                .collect(Collectors.joining("\n")))
                        .collect(Collectors.joining("\n\n")));
    }
}
