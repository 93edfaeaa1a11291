package fermata.analysis.hold.sequence;

import fermata.analysis.hold.HoldTrack;
import fermata.analysis.hold.Writing;
import fermata.decoder.cube.Face;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * What readings of many solves say together of how one last-layer sequence is turned.
 *
 * @param track as it is turned most likely, seen from the hold in which it was begun
 * @param seen in how many solves it was seen
 * @param alike in how many of them it was read as here
 * @param probability that it is turned so, 0..1
 */
public record LearnedSequence(HoldTrack track, int seen, int alike, double probability) {
    /** Less likely ones, and those of which more than three in ten were read otherwise, say nothing. */
    private static final double SURE = 0.9;

    private static final double AGREEMENT = 0.7;

    /**
     * The share of a reading's probability that is not believed: of a sequence a hand may have a second way, or slip.
     * Chosen on rehearsed solves, with {@link #DEPENDENCE}, so that the probabilities hold there.
     */
    private static final double DOUBT = 0.1;

    /**
     * Readings by one model err together, as most of what speaks for each is the same. So many count as the square root
     * of their number: between one that is said again and again (1) and independent witnesses (0).
     */
    private static final double DEPENDENCE = 0.5;

    public LearnedSequence {
        Objects.requireNonNull(track, "track");
        if (alike < 1 || seen < alike || !(probability >= 0 && probability <= 1)) {
            throw new IllegalArgumentException("a sequence read " + alike + " of " + seen
                    + " times in one way, with a probability of " + probability);
        }
    }

    /**
     * Pools readings of the same turns.
     *
     * <p>Each says how likely its own way is; what it leaves is shared alike by the other ways that were read and
     * something else. The logarithms are added, tempered (a logarithmic opinion pool), and made to sum to one.
     *
     * @param readings at least one, oldest first
     */
    static LearnedSequence pooled(List<SequenceReading> readings) {
        Map<List<Face>, List<SequenceReading>> byWay = new LinkedHashMap<>();
        readings.forEach(reading -> byWay.computeIfAbsent(reading.layers(), any -> new ArrayList<>())
                .add(reading));
        List<List<SequenceReading>> ways = List.copyOf(byWay.values());
        // The last one is something else than any that was read.
        double[] logs = new double[ways.size() + 1];
        for (int way = 0; way < ways.size(); way++) {
            for (SequenceReading reading : ways.get(way)) {
                double so = reading.probability() * (1 - DOUBT);
                for (int other = 0; other < logs.length; other++) {
                    logs[other] += Math.log(other == way ? Math.max(so, Double.MIN_NORMAL) : (1 - so) / ways.size());
                }
            }
        }
        int best = 0;
        for (int way = 1; way < ways.size(); way++) {
            best = logs[way] > logs[best] ? way : best;
        }
        double sum = 0;
        for (double log : logs) {
            sum += Math.exp((log - logs[best]) * Math.pow(readings.size(), -DEPENDENCE));
        }
        List<SequenceReading> alike = ways.get(best);
        return new LearnedSequence(alike.get(alike.size() - 1).track(), readings.size(), alike.size(), 1 / sum);
    }

    /** Whether it is sure enough to read other solves by. */
    public boolean isSure() {
        return probability >= SURE && alike >= AGREEMENT * seen;
    }

    /** In the hand's notation. */
    public String words() {
        return Writing.text(track);
    }

    /** By how much it makes each of its turns likelier, as a natural logarithm: its odds, spread over all of them. */
    double weight() {
        return Math.log(probability / Math.max(1 - probability, Double.MIN_NORMAL)) / track.size();
    }
}
