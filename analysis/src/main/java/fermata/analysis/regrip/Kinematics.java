package fermata.analysis.regrip;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * What fingers can do, in two tables: which finger makes a turn how often, and how often the hand takes hold anew for a
 * finger, by where it was left. Common practice and our own guesses, no source: priors with wide ranges, never truths.
 * Immutable; thread-safe.
 */
final class Kinematics {
    /** A side goes so many quarters either way from rest. */
    static final int WRIST_REACH = 1;
    /** How often the hand takes hold anew where a wrist would have to go further. */
    static final double BEYOND_REACH = 0.95;
    /** How often the wrist is set ahead when the hand takes hold anew, to have two quarters of room. */
    static final double SET_AHEAD = 0.25;
    /** How often the hand has come to rest where a stage begins, without that being a regrip for the turn. */
    static final double COME_TO_REST = 0.8;
    /** By how much a finger is passed over that would need a regrip where another does not. */
    static final double PASSED_OVER = 0.9;

    /** A left hand: L in the palm, thumb in front, middle finger behind, index finger free. A right hand mirrors it. */
    static final Kinematics ONE_HAND = new Kinematics("""
            turns            index   wrist   ring    thumb   palm
            U u              0.95    0       0       0.05    0
            R r              0       1       0       0       0
            D d              0       0       1       0       0
            F f              0.4     0       0       0.6     0
            F2 f2            0       0       0       0       1
            L l B b M E S    0       0       0       0       1
            """, """
            left at          index   wrist   ring    thumb   palm
            home             0.02    0.02    0.10    0.15    0.85
            index            0.02    0.02    0.40    0.15    0.85
            ring             0.30    0.10    0.05    0.30    0.85
            thumb            0.20    0.20    0.30    0.10    0.85
            palm             0.40    0.40    0.50    0.50    0.60
            adrift           0.90    0.90    0.90    0.90    0.95
            """);

    /** Two hands: each wrist turns its own side. */
    static final Kinematics TWO_HANDS = new Kinematics("""
            turns            index   wrist   ring    thumb   palm
            U u              1       0       0       0       0
            R r L l          0       1       0       0       0
            D d M            0       0       1       0       0
            F f              0.6     0       0       0.4     0
            B b E S          0       0       0       0       1
            """, """
            left at          index   wrist   ring    thumb   palm
            home             0.01    0.01    0.04    0.04    0.40
            index            0.01    0.01    0.08    0.04    0.40
            ring             0.05    0.03    0.03    0.08    0.40
            thumb            0.10    0.08    0.10    0.04    0.40
            palm             0.30    0.30    0.30    0.30    0.30
            adrift           0.30    0.30    0.35    0.35    0.60
            """);

    private final Map<String, List<Share>> fingers = new HashMap<>();
    private final Map<Left, double[]> anew = new EnumMap<>(Left.class);
    private final GripWays ways = new GripWays(this);

    /**
     * A finger that may make a turn.
     *
     * @param share how often it does
     */
    record Share(Finger finger, double share) {}

    private Kinematics(String shares, String odds) {
        rows(shares).forEach(this::addShares);
        rows(odds).forEach(row -> anew.put(Left.valueOf(row[0].toUpperCase(Locale.ROOT)), numbers(row)));
    }

    private static List<String[]> rows(String table) {
        return table.lines().skip(1).map(row -> row.split("\\s+")).toList();
    }

    private void addShares(String[] row) {
        double[] numbers = numbers(row);
        List<Share> shares = new ArrayList<>();
        for (Finger finger : Finger.values()) {
            if (numbers[finger.ordinal()] > 0) {
                shares.add(new Share(finger, numbers[finger.ordinal()]));
            }
        }
        for (int word = 0; word < row.length - numbers.length; word++) {
            fingers.put(row[word], List.copyOf(shares));
        }
    }

    private static double[] numbers(String[] row) {
        double[] numbers = new double[Finger.values().length];
        for (int finger = 0; finger < numbers.length; finger++) {
            numbers[finger] = Double.parseDouble(row[row.length - numbers.length + finger]);
        }
        return numbers;
    }

    /** The fingers that may make a turn, seen by a left hand. */
    List<Share> fingers(String letter, int quarters) {
        List<Share> ofHalf = Math.abs(quarters) == 2 ? fingers.get(letter + "2") : null;
        return ofHalf != null ? ofHalf : fingers.get(letter);
    }

    /** How often the hand takes hold anew before a finger turns, the wrists' reach left aside. */
    double anew(Left left, Finger finger) {
        return anew.get(left)[finger.ordinal()];
    }

    /** What follows from both tables, turn by turn. */
    GripWays ways() {
        return ways;
    }
}
