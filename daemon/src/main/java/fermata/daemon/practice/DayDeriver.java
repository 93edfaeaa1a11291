package fermata.daemon.practice;

import fermata.analysis.PracticeAnalysis;
import fermata.analysis.SolveReading;
import fermata.analysis.beat.HandFacts;
import fermata.analysis.beat.PracticedSolve;
import fermata.analysis.hold.sequence.LearnedSequences;
import fermata.analysis.hold.sequence.SequenceReading;
import fermata.analysis.night.NightLedger;
import fermata.analysis.night.SolveAccount;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.rest.Rhythm;
import fermata.daemon.document.KnownHand;
import fermata.daemon.document.NightViews;
import fermata.daemon.document.RegripViews;
import fermata.daemon.document.SolveViews;
import fermata.daemon.json.Json;
import fermata.daemon.json.NightDocument;
import fermata.daemon.json.SolveView;
import fermata.daemon.reading.Source;
import fermata.daemon.store.AccountRow;
import fermata.daemon.store.DerivationRow;
import fermata.daemon.store.DerivedRows;
import fermata.daemon.store.NightRow;
import fermata.daemon.store.RhythmRow;
import fermata.daemon.store.SnapshotRow;
import fermata.daemon.store.SolveDocument;
import fermata.daemon.store.SolveRow;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Analyses a whole practice day. For each solver, cube and hand: what the hand did, by the rhythm and the sequences
 * that the day before left; then the day's own rhythm, learned and frozen; then, by it, every attempt in full. The same
 * captures and the same day before give the same rows. Linear in the turns of the day; holds one day in memory.
 */
final class DayDeriver {
    /** What derives here: results of another version are derived again. */
    static final String VERSION = PracticeAnalysis.CODE_VERSION + "/daemon-7";

    private static final Comparator<Attempt> OLDEST_FIRST = Comparator.comparing(Attempt::startedAtMillis)
            .thenComparing((Attempt attempt) -> attempt.source().row().id())
            .thenComparing(attempt -> attempt.solve().firstTurn());

    private record Attempt(SolveRecord solve, Source source) {
        long startedAtMillis() {
            return source.startedAt(solve).toEpochMilli();
        }

        String id() {
            return solve.id();
        }

        RhythmChain.Owner owner() {
            return RhythmChain.Owner.of(solve.attempt().origin());
        }
    }

    private final LocalDate day;
    private final Hands hands;
    private final long marginMicros;
    private final List<SnapshotRow> snapshots = new ArrayList<>();
    private final List<RhythmRow> rhythms = new ArrayList<>();
    /** By id: an attempt's own hash would be over all its turns. */
    private final Map<String, SolveDocument> documents = new HashMap<>();

    private final Map<String, SolveAccount> accounts = new HashMap<>();
    private final Map<String, List<SequenceReading>> sequences = new HashMap<>();

    private DayDeriver(LocalDate day, Hands hands, long marginMicros) {
        this.day = day;
        this.hands = hands;
        this.marginMicros = marginMicros;
    }

    /**
     * Derives a day.
     *
     * @param sources all captures that have attempts on that day, and perhaps others
     * @param chain which rhythm the day begins from
     * @param known the rhythms by their ids
     * @param hands reads what hands did
     * @param finished the captures of which nothing is left to derive then
     * @param marginMicros so long before it is needed a pair must be identifiable
     */
    static DerivedRows derive(
            LocalDate day,
            List<Source> sources,
            RhythmChain chain,
            Rhythms known,
            Hands hands,
            List<DerivationRow> finished,
            long marginMicros) {
        DayDeriver deriver = new DayDeriver(day, hands, marginMicros);
        List<Attempt> attempts = attempts(day, sources);
        attempts.stream()
                .collect(Collectors.groupingBy(Attempt::owner, LinkedHashMap::new, Collectors.toList()))
                .forEach((owner, own) -> {
                    String beganFrom = chain.before(owner, day);
                    deriver.read(owner, own, chain, known.of(beganFrom));
                });
        return deriver.rows(attempts, finished);
    }

    private static List<Attempt> attempts(LocalDate day, List<Source> sources) {
        List<Attempt> attempts = new ArrayList<>();
        for (Source source : sources) {
            source.solves().stream()
                    .filter(solve -> source.day(solve).equals(day))
                    .forEach(solve -> attempts.add(new Attempt(solve, source)));
        }
        attempts.sort(OLDEST_FIRST);
        return attempts;
    }

    private void read(RhythmChain.Owner owner, List<Attempt> attempts, RhythmChain chain, Rhythm yesterday) {
        String beganFrom = chain.before(owner, day);
        RepeatedSequences repeated = hands.before(owner, day);
        LearnedSequences learned = repeated.learned();
        List<KnownHand> known = new ArrayList<>();
        List<PracticedSolve> practiced = new ArrayList<>();
        for (Attempt attempt : attempts) {
            KnownHand hand =
                    hands.read(attempt.solve(), attempt.source().reading().log(), yesterday, learned);
            known.add(hand);
            sequences.put(attempt.id(), hand.sequences());
            practiced.add(new PracticedSolve(attempt.solve(), facts(attempt.solve(), hand), practiced.size()));
        }
        Rhythm tonight = PracticeAnalysis.learn(practiced, yesterday);
        rhythms.add(new RhythmRow(
                day,
                owner.solver(),
                owner.cube(),
                owner.hand(),
                beganFrom,
                tonight.id(),
                chain.sequencesBefore(owner, day),
                repeated.and(known.stream().map(KnownHand::sequences).toList()).id()));
        if (!tonight.id().equals(beganFrom)) {
            snapshots.add(new SnapshotRow(tonight.id(), day, Json.write(tonight)));
        }
        keep(attempts, known, practiced, yesterday, tonight, beganFrom);
    }

    private void keep(
            List<Attempt> attempts,
            List<KnownHand> known,
            List<PracticedSolve> practiced,
            Rhythm yesterday,
            Rhythm tonight,
            String beganFrom) {
        for (int place = 0; place < attempts.size(); place++) {
            SolveReading reading = PracticeAnalysis.read(practiced.get(place), tonight, marginMicros);
            KnownHand hand = known.get(place);
            RegripViews regrips = RegripViews.of(
                    attempts.get(place).solve(),
                    hand.reading(),
                    yesterday.beats().informed(hands.own(attempts.get(place).solve())));
            keep(
                    attempts.get(place),
                    SolveViews.view(reading, attempts.get(place).source(), hand, regrips, beganFrom, marginMicros),
                    reading);
        }
    }

    private static HandFacts facts(SolveRecord solve, KnownHand hand) {
        return hand.reading()
                .map(reading -> HandFacts.of(reading, solve.attempt().origin().hand()))
                .orElseGet(() -> HandFacts.guess(solve, solve.attempt().origin().hand()));
    }

    private void keep(Attempt attempt, SolveView view, SolveReading reading) {
        Source source = attempt.source();
        SolveRecord solve = attempt.solve();
        SolveRow row = new SolveRow(
                solve.id(),
                source.row().id(),
                day,
                source.startedAt(solve).truncatedTo(ChronoUnit.MILLIS),
                solve.firstTurn(),
                source.version(),
                reading.provenance().snapshotId(),
                Json.write(SolveViews.item(view)));
        documents.put(solve.id(), new SolveDocument(row, Json.write(view)));
        accounts.put(solve.id(), reading.account());
    }

    private DerivedRows rows(List<Attempt> attempts, List<DerivationRow> finished) {
        List<SolveDocument> solves =
                attempts.stream().map(Attempt::id).map(documents::get).toList();
        List<AccountRow> kept = attempts.stream()
                .map(attempt -> AccountRows.row(
                        accounts.get(attempt.id()),
                        day,
                        documents.get(attempt.id()).row().startedAt(),
                        sequences.get(attempt.id())))
                .toList();
        return new DerivedRows(
                finished,
                Set.of(day),
                snapshots,
                rhythms,
                attempts.isEmpty() ? List.of() : List.of(night(attempts)),
                solves,
                kept);
    }

    private NightRow night(List<Attempt> attempts) {
        String snapshot = rhythms.get(0).snapshotId();
        NightLedger ledger = new NightLedger(day);
        attempts.forEach(attempt -> ledger.add(day, attempt.startedAtMillis() * 1000, accounts.get(attempt.id())));
        NightDocument document = new NightDocument(
                NightViews.item(day, ledger.figures()),
                new SolveView.Derived(
                        PracticeAnalysis.CODE_VERSION, snapshot, rhythms.get(0).beganFrom()));
        return new NightRow(day, VERSION, snapshot, Json.write(document));
    }
}
