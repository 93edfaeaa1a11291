package fermata.analysis.lookahead;

import fermata.analysis.event.Hand;
import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Face;
import fermata.decoder.orientation.Orientation;
import java.util.List;

/**
 * A brute force over all placements of pieces that show the same visible letters: placements are counted (not
 * searched for) place by place over all subsets of pieces, so that it shares nothing with the matching it checks.
 */
final class PlacementCount {
    private final int[][] cornerWays = new int[8][8];
    private final int[][] edgeWays = new int[12][12];
    private final double[][] cornerPlacements;
    private final double[][] edgePlacements;

    PlacementCount(CubeState state, Orientation hold, Hand hand, View view) {
        String letters = hold.facelets(state);
        char[] core = new char[54];
        for (int handPlace = 0; handPlace < 54; handPlace++) {
            core[hold.placeSeen(handPlace)] = view.shows(hand, handPlace) ? letters.charAt(handPlace) : '?';
        }
        for (Corner piece : Corner.values()) {
            for (Corner place : Corner.values()) {
                int[] places = {place.sticker(0), place.sticker(1), place.sticker(2)};
                cornerWays[piece.ordinal()][place.ordinal()] = fitting(core, places, piece.faces());
            }
        }
        for (Edge piece : Edge.values()) {
            for (Edge place : Edge.values()) {
                int[] places = {place.sticker(0), place.sticker(1)};
                edgeWays[piece.ordinal()][place.ordinal()] = fitting(core, places, piece.faces());
            }
        }
        cornerPlacements = countPlacements(cornerWays);
        edgePlacements = countPlacements(edgeWays);
    }

    private static int fitting(char[] core, int[] places, List<Face> colours) {
        int ways = 0;
        for (int shift = 0; shift < places.length; shift++) {
            boolean fits = true;
            for (int which = 0; which < places.length; which++) {
                char seen = core[places[(which + shift) % places.length]];
                fits &= seen == '?' || seen == colours.get(which).name().charAt(0);
            }
            ways += fits ? 1 : 0;
        }
        return ways;
    }

    int placesOf(Corner corner) {
        return places(cornerPlacements, corner.ordinal());
    }

    int placesOf(Edge edge) {
        return places(edgePlacements, edge.ordinal());
    }

    boolean isFixed(Corner corner) {
        return waysLeft(cornerPlacements, cornerWays, corner.ordinal()) == 1;
    }

    boolean isFixed(Edge edge) {
        return waysLeft(edgePlacements, edgeWays, edge.ordinal()) == 1;
    }

    private static int places(double[][] placements, int piece) {
        int count = 0;
        for (double with : placements[piece]) {
            count += with > 0 ? 1 : 0;
        }
        return count;
    }

    private static int waysLeft(double[][] placements, int[][] ways, int piece) {
        int count = 0;
        for (int place = 0; place < ways.length; place++) {
            count += placements[piece][place] > 0 ? ways[piece][place] : 0;
        }
        return count;
    }

    /** How many placements put each piece in each place: permanents, summed over the subsets of pieces used so far. */
    private static double[][] countPlacements(int[][] ways) {
        int size = ways.length;
        double[] before = new double[1 << size];
        double[] after = new double[1 << size];
        before[0] = 1;
        after[after.length - 1] = 1;
        for (int used = 0; used < before.length - 1; used++) {
            for (int next = 0; next < size; next++) {
                if ((used >> next & 1) == 0) {
                    before[used | 1 << next] += before[used] * ways[next][Integer.bitCount(used)];
                }
            }
        }
        double[][] placements = new double[size][size];
        for (int used = after.length - 2; used >= 0; used--) {
            int place = Integer.bitCount(used);
            for (int next = 0; next < size; next++) {
                if ((used >> next & 1) == 0) {
                    double rest = ways[next][place] * after[used | 1 << next];
                    after[used] += rest;
                    placements[next][place] += before[used] * rest;
                }
            }
        }
        return placements;
    }
}
