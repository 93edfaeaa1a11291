package fermata.rehearsal.character;

import fermata.decoder.cube.Face;
import fermata.decoder.notation.Sequence;
import fermata.rehearsal.truth.CuberHand;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;

/**
 * A made-up solver: hand, habits, pace, pauses. The figures of the characters here are our own, chosen within what
 * common practice says of one-handed solving; no measured source stands behind them.
 *
 * @param name what the character is called
 * @param hand the holding hand
 * @param habits what is known and done
 * @param pace how fast turns follow each other
 * @param pauses what holds them up
 */
public record CuberStyle(String name, CuberHand hand, CuberHabits habits, Pace pace, Pauses pauses) {
    private static final Handling COOK =
            new Handling(LeftSide.TILTED, false, true, 0.6, Set.of("3", "17", "30", "F", "Na", "Ra"));
    private static final Handling DECKHAND =
            new Handling(LeftSide.TILTED, true, false, 0.2, Set.of("2", "12", "41", "47", "V", "Y", "Ga"));
    private static final Handling ENGINEER =
            new Handling(LeftSide.FACED, false, true, 0.4, Set.of("21", "54", "Jb", "Ub"));

    public CuberStyle {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(hand, "hand");
        Objects.requireNonNull(habits, "habits");
        Objects.requireNonNull(pace, "pace");
        Objects.requireNonNull(pauses, "pauses");
    }

    /** The galley's cook: left hand, knows every case in one look, sees most pairs coming; about 20 seconds. */
    public static CuberStyle cook() {
        return new CuberStyle(
                "cook",
                CuberHand.LEFT,
                new CuberHabits(List.of(Face.U), 4, false, false, 0.004, COOK),
                new Pace(145_000, 245_000, 270_000, 0.8, 0.24, 0.002),
                new Pauses(0.5, 650_000, 600_000, 800_000, 300_000, 170_000, 0.32));
    }

    /** A deckhand: left hand, white or yellow cross, looks at two pairs before choosing; about 26 seconds. */
    public static CuberStyle deckhand() {
        return new CuberStyle(
                "deckhand",
                CuberHand.LEFT,
                new CuberHabits(List.of(Face.U, Face.D), 2, false, false, 0.008, DECKHAND),
                new Pace(175_000, 300_000, 330_000, 0.8, 0.28, 0.003),
                new Pauses(0.6, 850_000, 750_000, 950_000, 380_000, 210_000, 0.36));
    }

    /** The engineer on watch: right hand, two looks on each side of the last layer; about 34 seconds. */
    public static CuberStyle engineer() {
        return new CuberStyle(
                "engineer",
                CuberHand.RIGHT,
                new CuberHabits(List.of(Face.U), 2, true, false, 0.01, ENGINEER),
                new Pace(185_000, 315_000, 350_000, 0.8, 0.3, 0.003),
                new Pauses(0.7, 950_000, 700_000, 850_000, 400_000, 230_000, 0.38));
    }

    /** All characters. */
    public static List<CuberStyle> characters() {
        return List.of(cook(), deckhand(), engineer());
    }

    /** The last-layer sequences that the character knows, as it would write them down for its own hand. */
    public List<String> sequences() {
        HandMirror mirror = HandMirror.before(hand);
        Set<String> own = habits.handling().ownCases();
        return Stream.concat(
                        LastLayerSequences.orientations(own).stream(), LastLayerSequences.permutations(own).stream())
                .map(known -> new Sequence(known.sequence().moves().stream()
                                .map(mirror::of)
                                .toList())
                        .toString())
                .toList();
    }

    /** The same character with other habits. */
    public CuberStyle with(CuberHabits other) {
        return new CuberStyle(name, hand, other, pace, pauses);
    }
}
