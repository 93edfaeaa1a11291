package fermata.analysis.method;

import fermata.analysis.record.Method;
import fermata.analysis.record.StageName;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Span;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Reads the method and the stages of a solved cube out of its states, whatever the colour it was begun with and
 * however it was held.
 *
 * <p>The face of the first layer is the one over which cross and pairs grow earliest. Read as Roux is a solve whose two
 * blocks stood level before three pairs did over any cross (the four edges of one may stand by chance, but two blocks
 * are four pairs); as ZZ one whose edges were all oriented before its cross or blocks were done
 * and were so at each of their boundaries; as CFOP one whose pairs did not all come at once, unless three came with the
 * cross round oriented edges. Anything else is said to be something else. A CFOP solve whose edges happen to be
 * oriented by its cross reads as ZZ: the states are the same. Fewer than twenty turns tell no method: any cube can be
 * solved in twenty (Rokicki, Kociemba, Davidson and Dethridge 2010), and turns undone one by one look like ZZ. Only a
 * drill that began with its cross is then read, as CFOP.
 *
 * <p>Cost: linear in the turns: their states once, then some 150 passes of a few table steps. Pure; thread-safe.
 */
public final class MethodReader {
    /** The fewest turns that tell how a cube was solved. */
    private static final int FEWEST_TURNS = 20;

    private static final MethodReading OTHER = new MethodReading(Method.OTHER, List.of(), List.of());

    private MethodReader() {}

    /**
     * Reads a solve.
     *
     * @param start the state before the first turn, relative to the reference
     * @param turns core frame; together they solve {@code start}
     * @throws IllegalArgumentException if they do not
     */
    public static MethodReading read(CubeState start, List<Turn> turns) {
        if (!start.apply(turns).isSolved()) {
            throw new IllegalArgumentException("the " + turns.size() + " turns do not solve the state they begin in");
        }
        SolveStates solve = new SolveStates(start, turns);
        List<LayerChain> chains = Orientation.all().stream()
                .map(hold -> LayerChain.of(new HeldStates(solve, hold)))
                .toList();
        LayerChain best = chains.stream()
                .min(Comparator.comparingInt(LayerChain::sumOfTimes))
                .orElseThrow();
        List<LayerChain> onBestFace = chains.stream()
                .filter(chain -> chain.sumOfTimes() == best.sumOfTimes())
                .toList();
        boolean isCfop = best.isByPairs() && onBestFace.stream().noneMatch(LayerChain::isByOrientedBlocks);
        if (halfTurnsAsOne(turns) < FEWEST_TURNS) {
            return isCfop && best.cross() == 0 ? cfop(best) : OTHER;
        }
        BlockChain blocks = chains.stream()
                .map(chain -> BlockChain.of(chain.held()))
                .min(Comparator.comparingInt(BlockChain::sumOfTimes))
                .orElseThrow();
        if (blocks.block2() < best.pairs().get(2) && !blocks.cornersFirst()) {
            return roux(blocks);
        }
        Optional<OrientedChain> oriented = onBestFace.stream()
                .flatMap(chain -> OrientedChain.of(chain).stream())
                .min(Comparator.comparingInt(OrientedChain::oriented));
        if (oriented.isPresent()) {
            return zz(oriented.get());
        }
        return isCfop ? cfop(best) : OTHER;
    }

    /** Some cubes send a half turn as two. */
    private static long halfTurnsAsOne(List<Turn> turns) {
        return IntStream.range(0, turns.size())
                .filter(i -> i == 0 || turns.get(i).face() != turns.get(i - 1).face())
                .count();
    }

    private static MethodReading cfop(LayerChain chain) {
        LayerStages layers = new LayerStages(chain);
        List<StageMark> stages = new ArrayList<>();
        stages.add(layers.cross(0));
        stages.addAll(layers.pairs(layers.crossEnd()));
        stages.addAll(layers.lastLayer(chain.firstTwoLayers()));
        return new MethodReading(Method.CFOP, crossFaces(chain.held()), stages);
    }

    private static MethodReading zz(OrientedChain oriented) {
        LayerChain chain = oriented.chain();
        LayerStages layers = new LayerStages(chain);
        List<StageMark> stages = new ArrayList<>();
        stages.add(StageMark.plain(StageName.EO, 0, oriented.oriented()));
        if (oriented.isByBlocks()) {
            stages.add(StageMark.plain(StageName.LINE, oriented.oriented(), oriented.line()));
            stages.add(block(StageName.BLOCK1, chain.held(), oriented.leftFirst(), oriented.line(), oriented.block()));
            stages.add(block(
                    StageName.BLOCK2, chain.held(), !oriented.leftFirst(), oriented.block(), chain.firstTwoLayers()));
        } else {
            StageMark cross = layers.cross(oriented.oriented());
            stages.add(cross);
            stages.addAll(layers.pairs(cross.span().to()));
        }
        stages.addAll(layers.lastLayer(chain.firstTwoLayers()));
        return new MethodReading(Method.ZZ, oriented.isByBlocks() ? List.of() : crossFaces(chain.held()), stages);
    }

    private static MethodReading roux(BlockChain blocks) {
        HeldStates held = blocks.held();
        List<StageMark> stages = List.of(
                block(StageName.BLOCK1, held, blocks.leftFirst(), 0, blocks.block1()),
                block(StageName.BLOCK2, held, !blocks.leftFirst(), blocks.block1(), blocks.block2()),
                StageMark.plain(StageName.CORNERS, blocks.block2(), blocks.corners()),
                StageMark.plain(StageName.LAST_EDGES, blocks.corners(), held.end()));
        return new MethodReading(Method.ROUX, List.of(), stages);
    }

    private static StageMark block(StageName name, HeldStates held, boolean atLeft, int from, int to) {
        Face side = held.hold().coreAt(atLeft ? Face.L : Face.R);
        return new StageMark(
                name, "", new Span(from, to), List.of(side, held.hold().coreAt(Face.D)), List.of());
    }

    private static List<Face> crossFaces(HeldStates held) {
        return List.of(held.hold().coreAt(Face.D));
    }
}
