package fermata.analysis.hold.lattice;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The learned weights: what each feature adds to the logarithm of a reading's weight.
 *
 * <p>There is one set for everybody and a correction for each {@link Circle}; a solve is scored by the sum of
 * those it belongs to, so that the few one-handed solves known need only say how one hand differs from two. As
 * text, one weight a line: circle, feature in words, weight; first how far they are trusted. Immutable, thread-safe.
 */
public final class HoldWeights {
    private static final double LEAST = 0.03;
    private static final String HEADER = "hold-weights 1";
    private static final String TRUST = "trust ";

    /**
     * Kinds of solves that overlap. How one hand differs from two is learned apart for edges first and not: those
     * tilt where these write L in place. What one hand cannot reach is {@linkplain Reach stated}, not learned.
     */
    public enum Circle {
        ALL,
        ONE_HAND,
        EDGES_FIRST,
        ONE_HAND_EDGES_FIRST,
        REACH;

        /** The circles that a solve of this kind stands in. */
        public static List<Circle> of(boolean oneHand, boolean edgesFirst) {
            List<Circle> circles = new ArrayList<>(List.of(ALL));
            if (edgesFirst) {
                circles.add(EDGES_FIRST);
            }
            if (oneHand) {
                circles.add(REACH);
                circles.add(edgesFirst ? ONE_HAND_EDGES_FIRST : ONE_HAND);
            }
            return circles;
        }

        /**
         * The circles by which a solve is read, each list as likely as the others beforehand. One hand without edges
         * first may write like two hands, but for what it cannot reach, or as few others do: both are believed.
         */
        public static List<List<Circle>> ways(boolean oneHand, boolean edgesFirst) {
            return oneHand && !edgesFirst
                    ? List.of(of(true, false), List.of(ALL, REACH))
                    : List.of(of(oneHand, edgesFirst));
        }
    }

    private final double[][] byCircle;
    private final double trust;

    /** Weights as learned, trusted wholly. */
    public HoldWeights(double[][] byCircle) {
        this(byCircle, 1);
    }

    public HoldWeights(double[][] byCircle, double trust) {
        this.byCircle = byCircle;
        this.trust = checked(trust);
    }

    private static double checked(double trust) {
        if (!(trust > 0 && trust <= 1)) {
            throw new IllegalArgumentException("a trust of " + trust + " in weights is not above 0 and up to 1");
        }
        return trust;
    }

    /** How much of each weight counts when a probability is stated, 0..1; all of it counts for the reading itself. */
    double trust() {
        return trust;
    }

    /** The weights for a solve of these circles. Cost: one pass over all features. */
    public double[] of(List<Circle> circles) {
        double[] sum = new double[Template.SIZE];
        for (Circle circle : circles) {
            double[] some = byCircle[circle.ordinal()];
            for (int feature = 0; feature < sum.length; feature++) {
                sum[feature] += some[feature];
            }
        }
        return sum;
    }

    /** The same with other weights added, whatever the circles. */
    public HoldWeights plus(double[] more) {
        double[][] sum = byCircle.clone();
        sum[Circle.ALL.ordinal()] = of(List.of(Circle.ALL));
        for (int feature = 0; feature < more.length; feature++) {
            sum[Circle.ALL.ordinal()][feature] += more[feature];
        }
        return new HoldWeights(sum, trust);
    }

    /** The text form; weights under 0.03 are left out. */
    public String print() {
        StringBuilder text = new StringBuilder(HEADER).append('\n');
        text.append(TRUST).append(String.format(Locale.ROOT, "%.2f", trust)).append('\n');
        for (Circle circle : Circle.values()) {
            for (int feature = 0; feature < Template.SIZE; feature++) {
                double weight = byCircle[circle.ordinal()][feature];
                if (Math.abs(weight) >= LEAST) {
                    text.append(circle.name().toLowerCase(Locale.ROOT))
                            .append(' ')
                            .append(Template.written(feature))
                            .append(' ')
                            .append(String.format(Locale.ROOT, "%.2f", weight))
                            .append('\n');
                }
            }
        }
        return text.toString();
    }

    /**
     * Reads the text form.
     *
     * @throws IllegalArgumentException naming line and word
     */
    public static HoldWeights parse(String text) {
        List<String> lines = text.lines().toList();
        if (lines.isEmpty() || !lines.get(0).equals(HEADER)) {
            throw new IllegalArgumentException("line 1 of the weights must be \"" + HEADER + '"');
        }
        double[][] byCircle = new double[Circle.values().length][Template.SIZE];
        double trust = 1;
        for (int line = 1; line < lines.size(); line++) {
            try {
                if (lines.get(line).startsWith(TRUST)) {
                    trust = checked(Double.parseDouble(lines.get(line).substring(TRUST.length())));
                } else {
                    readLine(byCircle, lines.get(line));
                }
            } catch (IllegalArgumentException problem) {
                throw new IllegalArgumentException(
                        "line " + (line + 1) + " of the weights: " + problem.getMessage(), problem);
            }
        }
        return new HoldWeights(byCircle, trust);
    }

    private static void readLine(double[][] byCircle, String line) {
        if (line.isBlank() || line.startsWith("#")) {
            return;
        }
        List<String> words = List.of(line.split(" "));
        if (words.size() < 3) {
            throw new IllegalArgumentException("a line is a circle, a feature and a weight, not \"" + line + '"');
        }
        Circle circle = Circle.valueOf(words.get(0).toUpperCase(Locale.ROOT));
        int feature = Template.parse(words.subList(1, words.size() - 1));
        byCircle[circle.ordinal()][feature] = Double.parseDouble(words.get(words.size() - 1));
    }
}
