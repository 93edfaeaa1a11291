package fermata.analysis.hold.sequence;

import fermata.analysis.hold.HoldTrack;
import fermata.analysis.hold.Writing;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;

/**
 * How a last-layer sequence was read in one solve.
 *
 * @param track seen from the hold in which it was begun
 * @param probability that it was turned so: that of its least sure turn, as its turns are right or wrong together
 */
public record SequenceReading(HoldTrack track, double probability) {
    private static final Comparator<List<Turn>> BY_NUMBER = (one, other) -> {
        int turn = 0;
        while (turn < one.size() && one.get(turn) == other.get(turn)) {
            turn++;
        }
        return turn == one.size()
                ? 0
                : Integer.compare(one.get(turn).index(), other.get(turn).index());
    };

    public SequenceReading {
        Objects.requireNonNull(track, "track");
        if (!(probability >= 0 && probability <= 1)) {
            throw new IllegalArgumentException("probability " + probability + " of a sequence is not in 0..1");
        }
    }

    /**
     * The sequences of a solve that ended solved: all that orients the last layer, all that permutes it, without the
     * adjustments around them; those of fewer than {@value LastLayerPiece#SHORTEST} turns are left out. Cost: linear in
     * turns, some 100 steps each.
     *
     * @param start the state before the first turn, seen against the centres
     * @param read the solve, the two quarters of a half turn taken together
     * @param sure for each of its turns how likely its hold is right, 0..1
     */
    public static List<SequenceReading> of(CubeState start, HoldTrack read, List<Double> sure) {
        return LastLayerPiece.of(start, read.turns()).stream()
                .map(piece -> new SequenceReading(
                        read.part(piece.from(), piece.to()),
                        sure.subList(piece.from(), piece.to()).stream()
                                .mapToDouble(Double::doubleValue)
                                .min()
                                .orElseThrow()))
                .toList();
    }

    /** One that was kept as words, in the hand's notation. */
    public static SequenceReading of(String words, double probability) {
        return new SequenceReading(HoldTrack.of(Sequence.parse(words), Orientation.IDENTITY), probability);
    }

    /** In the hand's notation. */
    public String words() {
        return Writing.text(track);
    }

    /** Its turns as seen in the one of the 24 holds in which they come first by number: alike however it was begun. */
    List<Turn> key() {
        return Orientation.all().stream()
                .map(hold -> track.turns().stream().map(hold::toHand).toList())
                .min(BY_NUMBER)
                .orElseThrow();
    }

    /** Where the layer of each turn was seen. */
    List<Face> layers() {
        return IntStream.range(0, track.size()).mapToObj(track::layer).toList();
    }
}
