package fermata.decoder.notation;

import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Mirror;
import fermata.decoder.orientation.Orientation;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.Function;

/**
 * One written move in the hand frame.
 *
 * <p>What the centres feel of it are its {@link #turns(Orientation)}: one turn for a layer, one turn of the
 * <em>opposite</em> face for a wide turn, two for a slice, none for a rotation. {@link #rotation()} is how the hold
 * has changed after it.
 */
public sealed interface Move {
    /** Clockwise quarters, 1..3, in the sense of the move's own letter. */
    int quarters();

    /** The core-frame turns this move makes when begun in {@code hold}. */
    List<Turn> turns(Orientation hold);

    /** How the whole cube sits differently in the hand afterwards. */
    Orientation rotation();

    /** The move that takes this one back. */
    Move inverse();

    /** The same move by the other hand: what a mirror between left and right shows. Its own inverse. */
    Move mirrored();

    /**
     * Whether the centres feel it at a layer: a wide turn across from its letter, a slice on both its sides, a rotation
     * nowhere.
     *
     * @param face the layer, as the solver sees it
     */
    boolean isFeltAt(Face face);

    /** What the kind of the move makes of it: exactly one of these is asked. */
    <T> T fold(
            Function<? super Layer, ? extends T> layer,
            Function<? super Wide, ? extends T> wide,
            Function<? super SliceTurn, ? extends T> slice,
            Function<? super Rotation, ? extends T> rotation);

    /** The letter without its amount, lower case for wide turns and rotations. */
    String letter();

    /** The move in notation. */
    default String written() {
        return letter() + (quarters() == 1 ? "" : quarters() == 2 ? "2" : "'");
    }

    /**
     * An outer layer.
     *
     * @param turn the turn as the solver sees it
     */
    record Layer(Turn turn) implements Move {
        public Layer {
            Objects.requireNonNull(turn, "turn");
        }

        @Override
        public int quarters() {
            return turn.quarters();
        }

        @Override
        public List<Turn> turns(Orientation hold) {
            return List.of(hold.toCore(turn));
        }

        @Override
        public Orientation rotation() {
            return Orientation.IDENTITY;
        }

        @Override
        public Move inverse() {
            return new Layer(turn.inverse());
        }

        @Override
        public Move mirrored() {
            return new Layer(Mirror.of(turn));
        }

        @Override
        public String letter() {
            return turn.face().name();
        }

        @Override
        public boolean isFeltAt(Face at) {
            return turn.face() == at;
        }

        @Override
        public <T> T fold(
                Function<? super Layer, ? extends T> layer,
                Function<? super Wide, ? extends T> wide,
                Function<? super SliceTurn, ? extends T> slice,
                Function<? super Rotation, ? extends T> rotation) {
            return layer.apply(this);
        }
    }

    /**
     * An outer layer and the slice beside it together. The centres feel the opposite face turn.
     *
     * @param face the outer layer's face, as the solver sees it
     * @param quarters clockwise quarters seen at that face
     */
    record Wide(Face face, int quarters) implements Move {
        public Wide {
            Objects.requireNonNull(face, "face");
            requireQuarters(quarters);
        }

        @Override
        public List<Turn> turns(Orientation hold) {
            return List.of(Turn.of(hold.coreAt(face.opposite()), quarters));
        }

        @Override
        public Orientation rotation() {
            return Orientation.turning(face, quarters);
        }

        @Override
        public Move inverse() {
            return new Wide(face, 4 - quarters);
        }

        @Override
        public Move mirrored() {
            return new Wide(Mirror.of(face), 4 - quarters);
        }

        @Override
        public String letter() {
            return face.name().toLowerCase(Locale.ROOT);
        }

        @Override
        public boolean isFeltAt(Face at) {
            return face.opposite() == at;
        }

        @Override
        public <T> T fold(
                Function<? super Layer, ? extends T> layer,
                Function<? super Wide, ? extends T> wide,
                Function<? super SliceTurn, ? extends T> slice,
                Function<? super Rotation, ? extends T> rotation) {
            return wide.apply(this);
        }
    }

    /**
     * A middle slice. The centres feel the two outer faces beside it turn the other way.
     *
     * @param slice which slice
     * @param quarters clockwise quarters in the sense of the face it follows
     */
    record SliceTurn(Slice slice, int quarters) implements Move {
        public SliceTurn {
            Objects.requireNonNull(slice, "slice");
            requireQuarters(quarters);
        }

        @Override
        public List<Turn> turns(Orientation hold) {
            Face followed = slice.follows();
            return List.of(
                    Turn.of(hold.coreAt(followed.opposite()), quarters), Turn.of(hold.coreAt(followed), -quarters));
        }

        @Override
        public Orientation rotation() {
            return Orientation.turning(slice.follows(), quarters);
        }

        @Override
        public Move inverse() {
            return new SliceTurn(slice, 4 - quarters);
        }

        @Override
        public Move mirrored() {
            // M follows L, and in the mirror it follows R: the same layer turned the same way.
            return slice == Slice.M ? this : inverse();
        }

        @Override
        public String letter() {
            return slice.name();
        }

        @Override
        public boolean isFeltAt(Face at) {
            return slice.follows().sharesAxisWith(at);
        }

        @Override
        public <T> T fold(
                Function<? super Layer, ? extends T> layer,
                Function<? super Wide, ? extends T> wide,
                Function<? super SliceTurn, ? extends T> sliceTurn,
                Function<? super Rotation, ? extends T> rotation) {
            return sliceTurn.apply(this);
        }
    }

    /**
     * The whole cube.
     *
     * @param like the face the rotation turns like: R for x, U for y, F for z
     * @param quarters clockwise quarters seen at that face
     */
    record Rotation(Face like, int quarters) implements Move {
        public Rotation {
            if (like != Face.R && like != Face.U && like != Face.F) {
                throw new IllegalArgumentException("a rotation is written like R (x), U (y) or F (z), not " + like);
            }
            requireQuarters(quarters);
        }

        @Override
        public List<Turn> turns(Orientation hold) {
            return List.of();
        }

        @Override
        public Orientation rotation() {
            return Orientation.turning(like, quarters);
        }

        @Override
        public Move inverse() {
            return new Rotation(like, 4 - quarters);
        }

        @Override
        public Move mirrored() {
            // A rotation about the axis that stands on the mirror keeps its sense.
            return like == Face.R ? this : inverse();
        }

        @Override
        public String letter() {
            return like == Face.R ? "x" : like == Face.U ? "y" : "z";
        }

        @Override
        public boolean isFeltAt(Face at) {
            return false;
        }

        @Override
        public <T> T fold(
                Function<? super Layer, ? extends T> layer,
                Function<? super Wide, ? extends T> wide,
                Function<? super SliceTurn, ? extends T> slice,
                Function<? super Rotation, ? extends T> rotation) {
            return rotation.apply(this);
        }
    }

    private static void requireQuarters(int quarters) {
        if (quarters < 1 || quarters > 3) {
            throw new IllegalArgumentException("quarters " + quarters + " of a move is not in 1..3");
        }
    }
}
