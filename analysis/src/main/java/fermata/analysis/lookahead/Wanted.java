package fermata.analysis.lookahead;

import fermata.analysis.record.StageRecord;
import fermata.decoder.cube.Corner;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Face;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The pieces that a stage brings home: a pair's corner and edge, or the five pieces of a block.
 *
 * @param corners which corners
 * @param edges which edges
 */
public record Wanted(List<Corner> corners, List<Edge> edges) {
    public Wanted {
        corners = List.copyOf(corners);
        edges = List.copyOf(edges);
    }

    /**
     * What a pair or block stage is about.
     *
     * @param below the face of the cross
     */
    static Wanted of(StageRecord stage, Face below) {
        return switch (stage.name()) {
            case PAIR1, PAIR2, PAIR3, PAIR4 -> pair(stage.faces(), below);
            case BLOCK1, BLOCK2 -> block(stage.faces().get(0), stage.faces().get(1));
            default -> new Wanted(List.of(), List.of());
        };
    }

    private static Wanted pair(List<Face> sides, Face below) {
        Set<Face> three = new HashSet<>(sides);
        three.add(below);
        return new Wanted(
                Arrays.stream(Corner.values())
                        .filter(corner -> three.containsAll(corner.faces()))
                        .toList(),
                Arrays.stream(Edge.values())
                        .filter(edge -> Set.copyOf(sides).containsAll(edge.faces()))
                        .toList());
    }

    /** A 1x2x3 block at {@code side}: everything there that does not touch the face across from {@code below}. */
    private static Wanted block(Face side, Face below) {
        Face above = below.opposite();
        return new Wanted(
                Arrays.stream(Corner.values())
                        .filter(corner -> corner.touches(side) && !corner.touches(above))
                        .toList(),
                Arrays.stream(Edge.values())
                        .filter(edge -> edge.touches(side) && !edge.touches(above))
                        .toList());
    }

    boolean isIdentifiedBy(PieceKnowledge knowledge) {
        return corners.stream().allMatch(corner -> knowledge.of(corner).isIdentified())
                && edges.stream().allMatch(edge -> knowledge.of(edge).isIdentified());
    }

    boolean isByEliminationIn(PieceKnowledge knowledge) {
        return corners.stream().anyMatch(corner -> knowledge.of(corner).kind() == Knowing.Kind.ELIMINATED)
                || edges.stream().anyMatch(edge -> knowledge.of(edge).kind() == Knowing.Kind.ELIMINATED);
    }

    /** Its pieces that are not identified. */
    Wanted openIn(PieceKnowledge knowledge) {
        return new Wanted(
                corners.stream()
                        .filter(corner -> !knowledge.of(corner).isIdentified())
                        .toList(),
                edges.stream()
                        .filter(edge -> !knowledge.of(edge).isIdentified())
                        .toList());
    }
}
