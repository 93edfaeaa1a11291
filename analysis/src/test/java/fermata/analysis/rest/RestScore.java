package fermata.analysis.rest;

import fermata.analysis.beat.HandFacts;
import fermata.analysis.beat.PracticedSolve;
import fermata.rehearsal.truth.RestTruth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** Holds what was found against the truth: rests of at least 300 ms, strictly on both sides, and seconds by cause. */
public final class RestScore {
    static final long LONG_MICROS = 300_000;
    static final int NIGHT = 50;

    int found;
    int real;
    int both;
    final Map<Cause, Double> estimated = new EnumMap<>(Cause.class);
    final Map<Cause, Double> truly = new EnumMap<>(Cause.class);
    /** By true largest cause (or none) and found largest cause (or none). */
    final Map<String, Map<String, Integer>> confusion = new TreeMap<>();

    /** Says what the hand did in a solve, knowing the rhythm that the night before left. */
    interface HandTeller {
        HandFacts of(Performed solve, Rhythm yesterday);
    }

    /** Reads the solves in nights of fifty, each by a rhythm learned from it and the nights before. */
    static RestScore of(List<Performed> solves, boolean hasHolds) {
        return of(solves, (solve, yesterday) -> hasHolds ? solve.facts() : solve.unread());
    }

    /** The same with holds from elsewhere. */
    static RestScore of(List<Performed> solves, HandTeller teller) {
        RestScore score = new RestScore();
        Rhythm rhythm = Rhythm.coldStart();
        for (int from = 0; from < solves.size(); from += NIGHT) {
            List<Performed> night = solves.subList(from, Math.min(solves.size(), from + NIGHT));
            List<PracticedSolve> practiced = new ArrayList<>();
            for (Performed solve : night) {
                practiced.add(new PracticedSolve(solve.record(), teller.of(solve, rhythm), practiced.size()));
            }
            rhythm = RestReader.learn(practiced, rhythm);
            for (int solve = 0; solve < night.size(); solve++) {
                score.add(night.get(solve), RestReader.read(practiced.get(solve), rhythm));
            }
        }
        return score;
    }

    public static List<PracticedSolve> practiced(List<Performed> night, boolean hasHolds) {
        List<PracticedSolve> practiced = new ArrayList<>();
        for (Performed solve : night) {
            practiced.add(
                    new PracticedSolve(solve.record(), hasHolds ? solve.facts() : solve.unread(), practiced.size()));
        }
        return practiced;
    }

    private void add(Performed solve, RestReading reading) {
        for (RestTruth rest : solve.rests()) {
            truly.merge(Cause.valueOf(rest.cause().name()), rest.lengthMicros() / 1e6, Double::sum);
        }
        for (Cause cause : Cause.values()) {
            estimated.merge(cause, reading.expectedMicros(cause) / 1e6, Double::sum);
        }
        for (ExplainedRest beat : reading.beats()) {
            boolean isReal = solve.restAfter(beat.afterTurn()) >= LONG_MICROS;
            boolean isFound = beat.reading().isRestOfAtLeast(LONG_MICROS);
            real += isReal ? 1 : 0;
            found += isFound ? 1 : 0;
            both += isReal && isFound ? 1 : 0;
            if (isReal || isFound) {
                String called = isFound ? beat.largest().cause().written() : "-";
                confusion
                        .computeIfAbsent(isReal ? largest(solve, beat.afterTurn()) : "-", key -> new TreeMap<>())
                        .merge(called, 1, Integer::sum);
            }
        }
    }

    private static String largest(Performed solve, int afterTurn) {
        return solve.rests().stream()
                .filter(rest -> rest.afterTurn() == afterTurn)
                .max(Comparator.comparingLong(RestTruth::lengthMicros))
                .map(rest -> Cause.valueOf(rest.cause().name()).written())
                .orElseThrow();
    }

    double precision() {
        return (double) both / found;
    }

    double recall() {
        return (double) both / real;
    }

    /** The largest relative error of a cause's seconds among the causes that the truth knows. */
    double worstCauseError() {
        return truly.keySet().stream().mapToDouble(this::error).max().orElseThrow();
    }

    /** How far a cause's seconds are off, as a share of the true ones. */
    double error(Cause cause) {
        return Math.abs(estimated.get(cause) / truly.get(cause) - 1);
    }

    String print(String title) {
        StringBuilder text = new StringBuilder(String.format(
                Locale.ROOT,
                "%s: rests >= 300 ms: precision %.3f (%d of %d), recall %.3f (%d of %d)%n",
                title,
                precision(),
                both,
                found,
                recall(),
                both,
                real));
        for (Cause cause : Cause.values()) {
            double truth = truly.getOrDefault(cause, 0.0);
            text.append(String.format(
                    Locale.ROOT,
                    "    %-12s %8.1f s found %8.1f s true %s%n",
                    cause.written(),
                    estimated.get(cause),
                    truth,
                    truth == 0
                            ? ""
                            : String.format(Locale.ROOT, "%+.1f %%", 100 * (estimated.get(cause) / truth - 1))));
        }
        text.append("    largest cause, true by found: ").append(confusion).append('\n');
        return text.toString();
    }
}
