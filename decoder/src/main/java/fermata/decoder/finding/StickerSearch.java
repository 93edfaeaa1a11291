package fermata.decoder.finding;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Facelets;
import fermata.decoder.finding.StatePairs.Pair;
import fermata.decoder.stream.profile.StateEncoding.Run;
import fermata.decoder.stream.profile.StateEncoding.Stickers;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Finds a state that is sent sticker by sticker: in the frame of the solved cube, six blocks of one value each. In
 * which order the faces come, the turns tell: all 720 orders are tried on frames one turn apart.
 */
final class StickerSearch {
    private static final double LEAST_AGREEING = 0.8;
    private static final int NARROWEST = 3;

    private final StatePairs pairs;
    private final int frameBytes;

    StickerSearch(StatePairs pairs, int frameBytes) {
        this.pairs = pairs;
        this.frameBytes = frameBytes;
    }

    Optional<Stickers> find() {
        for (boolean centres : new boolean[] {true, false}) {
            int cells = centres ? 9 : 8;
            List<Run> runs = RunWalk.runs(6 * cells, NARROWEST, frameBytes, run -> isSolved(run, cells));
            for (Run run : runs) {
                Optional<Stickers> found = ordered(run, centres);
                if (found.isPresent()) {
                    return found;
                }
            }
        }
        return Optional.empty();
    }

    private boolean isSolved(Run run, int cells) {
        byte[] frame = pairs.solved().bytes();
        Set<Long> values = new HashSet<>();
        for (int block = 0; block < 6; block++) {
            long value = run.at(block * cells).read(frame);
            for (int cell = 1; cell < cells; cell++) {
                if (run.at(block * cells + cell).read(frame) != value) {
                    return false;
                }
            }
            if (!values.add(value)) {
                return false;
            }
        }
        return true;
    }

    private Optional<Stickers> ordered(Run run, boolean centres) {
        List<List<Face>> orders = new ArrayList<>();
        permute(new ArrayList<>(), orders);
        return orders.stream()
                .map(faces -> new Stickers(run, faces, centres, colours(run, faces, centres ? 9 : 8)))
                .filter(this::agrees)
                .findFirst();
    }

    private Map<Long, Face> colours(Run run, List<Face> faces, int cells) {
        Map<Long, Face> colours = new HashMap<>();
        for (int block = 0; block < 6; block++) {
            colours.put(run.at(block * cells).read(pairs.solved().bytes()), faces.get(block));
        }
        return colours;
    }

    private static void permute(List<Face> begun, List<List<Face>> orders) {
        if (begun.size() == 6) {
            orders.add(List.copyOf(begun));
            return;
        }
        for (Face face : Face.values()) {
            if (!begun.contains(face)) {
                begun.add(face);
                permute(begun, orders);
                begun.remove(begun.size() - 1);
            }
        }
    }

    private boolean agrees(Stickers stickers) {
        int wrong = 0;
        for (Pair pair : pairs.pairs()) {
            Optional<CubeState> before = read(stickers, pair.before().bytes());
            Optional<CubeState> after = read(stickers, pair.after().bytes());
            boolean isAsked = before.map(s -> s.apply(pair.asked()))
                    .filter(s -> after.filter(s::equals).isPresent())
                    .isPresent();
            if (!isAsked && ++wrong > pairs.pairs().size() * (1 - LEAST_AGREEING)) {
                return false;
            }
        }
        return true;
    }

    private static Optional<CubeState> read(Stickers stickers, byte[] frame) {
        char[] letters = CubeState.SOLVED.facelets().toCharArray();
        int sent = 0;
        for (Face face : stickers.faces()) {
            for (int place = 0; place < 9; place++) {
                if (place == 4 && !stickers.withCentres()) {
                    continue;
                }
                Face colour = stickers.colours().get(stickers.run().at(sent++).read(frame));
                if (colour == null) {
                    return Optional.empty();
                }
                letters[9 * face.ordinal() + place] = colour.name().charAt(0);
            }
        }
        try {
            return Optional.of(Facelets.read(new String(letters)));
        } catch (IllegalArgumentException notACube) {
            return Optional.empty();
        }
    }
}
