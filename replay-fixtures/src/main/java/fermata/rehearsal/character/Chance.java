package fermata.rehearsal.character;

import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import java.util.List;
import java.util.Objects;
import java.util.random.RandomGenerator;

/** The draws a virtual cuber lives by, all from the one generator handed in. */
public final class Chance {
    /** No hand turns faster than this, and a log-normal has no lower end of its own. */
    private static final long SHORTEST_MICROS = 40_000;

    public final RandomGenerator random;

    public Chance(RandomGenerator random) {
        this.random = Objects.requireNonNull(random, "random");
    }

    public boolean happens(double probability) {
        return random.nextDouble() < probability;
    }

    /** Log-normal about a median, at least {@value #SHORTEST_MICROS}. */
    public long around(double medianMicros, double spread) {
        return Math.max(SHORTEST_MICROS, Math.round(medianMicros * Math.exp(spread * random.nextGaussian())));
    }

    public int between(int least, int most) {
        return random.nextInt(least, most + 1);
    }

    public <T> T oneOf(List<T> values) {
        return values.get(random.nextInt(values.size()));
    }

    /** A turn of another face than the one before, any face if there is none. */
    public Turn turnAfter(List<Turn> before) {
        Face last = before.isEmpty() ? null : before.get(before.size() - 1).face();
        Turn turn = Turn.ofIndex(random.nextInt(18));
        while (turn.face() == last) {
            turn = Turn.ofIndex(random.nextInt(18));
        }
        return turn;
    }
}
