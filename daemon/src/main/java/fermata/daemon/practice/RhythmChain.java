package fermata.daemon.practice;

import fermata.analysis.event.Origin;
import fermata.analysis.hotspot.Series;
import fermata.analysis.rest.Rhythm;
import fermata.daemon.store.RhythmRow;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The rhythms of all practice days, by solver, cube and hand: each day begins from the one that the day before it left,
 * the first from the cold start; and so with the sequences that it is read by. Where that is broken, because an older
 * day was derived again and left others, the days after it must be derived again, in their order. Not thread-safe.
 */
final class RhythmChain {
    /** The rhythm of the first day. */
    static final String COLD_START = Rhythm.coldStart().id();

    /** Whose rhythm it is. */
    record Owner(String solver, String cube, String hand) {
        static Owner of(Origin origin) {
            return new Owner(origin.solver(), origin.cube(), origin.hand().written());
        }

        static Owner of(Series series) {
            return new Owner(series.solver(), series.cube(), series.hand().written());
        }

        static Owner of(RhythmRow row) {
            return new Owner(row.solver(), row.cube(), row.hand());
        }
    }

    private final Map<Owner, NavigableMap<LocalDate, RhythmRow>> days = new HashMap<>();

    RhythmChain(List<RhythmRow> rows) {
        rows.forEach(this::put);
    }

    private void put(RhythmRow row) {
        days.computeIfAbsent(Owner.of(row), owner -> new TreeMap<>()).put(row.day(), row);
    }

    /** Puts these rows in the place of all that a day had. */
    void replace(LocalDate day, List<RhythmRow> rows) {
        days.values().forEach(chain -> chain.remove(day));
        rows.forEach(this::put);
    }

    /** Which rhythm a day begins from: what the owner's practice day before it left. */
    String before(Owner owner, LocalDate day) {
        NavigableMap<LocalDate, RhythmRow> chain = days.getOrDefault(owner, new TreeMap<>());
        return chain.headMap(day, false).isEmpty()
                ? COLD_START
                : chain.lowerEntry(day).getValue().snapshotId();
    }

    /** Which sequences a day is read by: what the owner's practice day before it left. */
    String sequencesBefore(Owner owner, LocalDate day) {
        NavigableMap<LocalDate, RhythmRow> chain = days.getOrDefault(owner, new TreeMap<>());
        return chain.headMap(day, false).isEmpty()
                ? ""
                : chain.lowerEntry(day).getValue().sequencesLeft();
    }

    /** The days that began from another rhythm or other sequences than they would now. Cost: one look at each day. */
    Set<LocalDate> broken() {
        Set<LocalDate> broken = new TreeSet<>();
        for (NavigableMap<LocalDate, RhythmRow> chain : days.values()) {
            String left = COLD_START;
            String sequences = "";
            for (RhythmRow row : chain.values()) {
                if (!row.beganFrom().equals(left) || !row.sequencesBefore().equals(sequences)) {
                    broken.add(row.day());
                }
                left = row.snapshotId();
                sequences = row.sequencesLeft();
            }
        }
        return broken;
    }
}
