package fermata.analysis.method;

import fermata.analysis.cases.LastLayerCases;
import fermata.analysis.cases.PairCases;
import fermata.analysis.goal.HeldState;
import fermata.analysis.goal.Pieces;
import fermata.analysis.record.StageName;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Span;
import fermata.decoder.search.Slot;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.Predicate;

/** Turns a {@link LayerChain} into stages with their cases and parts. */
final class LayerStages {
    private final LayerChain chain;
    private final HeldStates held;

    LayerStages(LayerChain chain) {
        this.chain = chain;
        this.held = chain.held();
    }

    /** Where the cross stage ends: with its alignment if nothing but turns of its face lies between. */
    int crossEnd() {
        for (int time = chain.cross() + 1; time <= chain.aligned(); time++) {
            if (held.turnTo(time).face() != Face.D) {
                return chain.cross();
            }
        }
        return chain.aligned();
    }

    StageMark cross(int from) {
        int end = Math.max(from, crossEnd());
        List<StageMark> parts = new ArrayList<>();
        if (end == chain.aligned() && from <= chain.cross() && chain.cross() < end) {
            parts.add(StageMark.plain(StageName.CROSS, from, chain.cross()));
            parts.add(StageMark.plain(StageName.ALIGN, chain.cross(), end));
        }
        return new StageMark(
                StageName.CROSS, "", new Span(from, end), List.of(held.hold().coreAt(Face.D)), parts);
    }

    List<StageMark> pairs(int from) {
        List<StageMark> stages = new ArrayList<>();
        int begun = from;
        for (int number = 1; number <= 4; number++) {
            int end = Math.max(begun, chain.pairs().get(number - 1));
            stages.add(pair(number, new Span(begun, end)));
            begun = end;
        }
        return stages;
    }

    private StageMark pair(int number, Span span) {
        Slot slot = chain.slots().get(number - 1);
        List<Face> faces = slot.faces().stream().map(held.hold()::coreAt).toList();
        // Over a cross that stands off its centres a piece has no place of its own to be seen from.
        String met = span.isEmpty()
                ? LastLayerCases.SKIP
                : caseAt(span.from(), Pieces::cross, state -> PairCases.of(state, slot));
        List<StageMark> parts = new ArrayList<>();
        int aligned = chain.aligned();
        if (span.from() < aligned && aligned < span.to()) {
            parts.add(StageMark.plain(StageName.ALIGN, span.from(), aligned));
            parts.add(new StageMark(StageName.pair(number), "", new Span(aligned, span.to()), faces, List.of()));
        }
        return new StageMark(StageName.pair(number), met, span, faces, parts);
    }

    /** Orientation, permutation and the last turn; the first two layers are solved at {@code from}. */
    List<StageMark> lastLayer(int from) {
        int oriented = Math.max(from, chain.oriented());
        int permuted = Math.max(oriented, chain.permuted());
        return List.of(
                orient(from, oriented),
                permute(oriented, permuted),
                StageMark.plain(StageName.AUF, permuted, held.end()));
    }

    private StageMark orient(int from, int to) {
        return new StageMark(
                StageName.ORIENT,
                caseAt(from, Pieces::firstTwoLayers, LastLayerCases::orientation),
                new Span(from, to),
                List.of(),
                halves(
                        new Span(from, to),
                        Pieces::topEdgesOriented,
                        Pieces::topCornersOriented,
                        List.of(StageName.ORIENT_EDGES, StageName.ORIENT_CORNERS)));
    }

    private StageMark permute(int from, int to) {
        return new StageMark(
                StageName.PERMUTE,
                caseAt(from, Pieces::topOriented, LastLayerCases::permutation),
                new Span(from, to),
                List.of(),
                halves(
                        new Span(from, to),
                        s -> Pieces.topEdgesInOrder(s) && Pieces.topOriented(s),
                        s -> Pieces.topCornersInOrder(s) && Pieces.topOriented(s),
                        List.of(StageName.PERMUTE_EDGES, StageName.PERMUTE_CORNERS)));
    }

    /** The case at a time; a stage that ended halfway through a half turn is looked at there. */
    private String caseAt(int time, Predicate<HeldState> solved, Function<CubeState, String> named) {
        return held.statesAt(time).stream()
                .filter(solved)
                .findFirst()
                .map(HeldState::renamed)
                .map(named)
                .orElse("");
    }

    /**
     * Two parts if the one half or the other was done strictly inside the stage, and not at its beginning; else none.
     */
    private List<StageMark> halves(
            Span stage, Predicate<HeldState> edges, Predicate<HeldState> corners, List<StageName> names) {
        if (stage.isEmpty() || held.holdsAt(stage.from(), edges) || held.holdsAt(stage.from(), corners)) {
            return List.of();
        }
        int edgesDone = held.first(stage.from(), stage.to(), edges);
        int cornersDone = held.first(stage.from(), stage.to(), corners);
        int middle = Math.min(edgesDone, cornersDone);
        if (middle == stage.to()) {
            return List.of();
        }
        int first = edgesDone <= cornersDone ? 0 : 1;
        return List.of(
                StageMark.plain(names.get(first), stage.from(), middle),
                StageMark.plain(names.get(1 - first), middle, stage.to()));
    }
}
