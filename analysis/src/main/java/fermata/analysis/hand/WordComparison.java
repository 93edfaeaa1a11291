package fermata.analysis.hand;

import fermata.analysis.hold.InferredRotation;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.CoreStep;
import fermata.decoder.notation.Move;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** One comparison of words with heard turns, turn by turn. One use. */
final class WordComparison {
    private final List<Move> moves;
    private final List<CoreStep> steps;
    private final List<Turn> heard;
    /** The steps of the words that no heard turn was found for yet, by their numbers. */
    private final List<Integer> open;
    /** By step, the first heard turn that it made. */
    private final int[] places;

    private final MadeTurn[] made;

    WordComparison(Sequence words, List<Turn> heard) {
        this.moves = words.moves();
        this.steps = words.walk(Orientation.IDENTITY).steps();
        this.heard = List.copyOf(heard);
        this.open = new ArrayList<>(IntStream.range(0, steps.size()).boxed().toList());
        this.places = new int[steps.size()];
        this.made = new MadeTurn[heard.size()];
    }

    StatedHand run() {
        for (int turn = 0; turn < made.length; turn++) {
            if (made[turn] == null && !take(turn)) {
                return new StatedHand.Differs(turn, heard.get(turn).toString(), nextSaid());
            }
        }
        return open.isEmpty()
                ? new StatedHand.Agrees(HandReading.said(List.of(made), rotations()))
                : new StatedHand.Differs(made.length, "", nextSaid());
    }

    private String nextSaid() {
        return open.isEmpty() ? "" : said(0).turn().toString();
    }

    private CoreStep said(int place) {
        return steps.get(open.get(place));
    }

    /** Finds what the words say of a heard turn, and crosses it out. */
    private boolean take(int turn) {
        Turn wanted = heard.get(turn);
        int place = next(wanted);
        if (place < 0) {
            return false;
        }
        Turn found = said(place).turn();
        if (found.equals(wanted)) {
            make(place, List.of(turn));
            return true;
        }
        return found.quarters() == 2 ? takeQuarters(turn, place) : wanted.quarters() == 2 && takeHalf(turn, place);
    }

    /** The first of the words' next turns, as long as they are about one axis, of the same face; -1 if none is. */
    private int next(Turn wanted) {
        for (int place = 0; place < open.size() && said(place).turn().commutesWith(said(0).turn()); place++) {
            if (said(place).turn().face() == wanted.face()) {
                return place;
            }
        }
        return -1;
    }

    /** The half turn that was said was heard as two quarters. */
    private boolean takeQuarters(int turn, int place) {
        Turn wanted = heard.get(turn);
        int other = turn + 1;
        while (other < made.length && heard.get(other).commutesWith(wanted)) {
            if (heard.get(other).face() == wanted.face()) {
                boolean completes = heard.get(other).equals(wanted);
                if (completes) {
                    make(place, List.of(turn, other));
                }
                return completes;
            }
            other++;
        }
        return false;
    }

    /** Two quarters that were said were heard as one half turn. */
    private boolean takeHalf(int turn, int place) {
        int first = open.remove(place);
        CoreStep step = steps.get(first);
        int second = next(step.turn());
        if (second < 0 || !said(second).turn().equals(step.turn())) {
            open.add(place, first);
            return false;
        }
        places[first] = turn;
        places[open.remove(second)] = turn;
        made[turn] = new MadeTurn(twice(moves.get(step.move()), step), step.hold(), 1);
        return true;
    }

    private static Move twice(Move quarter, CoreStep step) {
        Turn seen = step.hold().toHand(step.turn());
        return quarter.fold(
                layer -> new Move.Layer(Turn.of(seen.face(), 2)),
                wide -> new Move.Wide(seen.face().opposite(), 2),
                slice -> new Move.SliceTurn(slice.slice(), 2),
                rotation -> {
                    throw new IllegalArgumentException("the rotation " + rotation.written() + " makes no turn");
                });
    }

    private void make(int place, List<Integer> turns) {
        int number = open.remove(place);
        CoreStep step = steps.get(number);
        places[number] = turns.get(0);
        List<MadeTurn> parts =
                HalfTurns.parts(turns.stream().map(heard::get).toList(), moves.get(step.move()), step.hold(), 1);
        for (int part = 0; part < parts.size(); part++) {
            made[turns.get(part)] = parts.get(part);
        }
    }

    /** The rotations that were said between turns, those that follow each other as one. */
    private List<InferredRotation> rotations() {
        List<InferredRotation> rotations = new ArrayList<>();
        Orientation net = Orientation.IDENTITY;
        int stepsDone = 0;
        for (Move move : moves) {
            if (move instanceof Move.Rotation) {
                net = net.then(move.rotation());
                continue;
            }
            // One in the middle of a heard half turn is about the layer's own axis and has no place of its own.
            if (stepsDone > 0 && net != Orientation.IDENTITY && places[stepsDone] > places[stepsDone - 1]) {
                rotations.add(new InferredRotation(places[stepsDone], net, 1));
            }
            net = Orientation.IDENTITY;
            stepsDone += move.turns(Orientation.IDENTITY).size();
        }
        return rotations;
    }
}
