package fermata.decoder.prompt;

import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.prompt.PromptStep.Pace;
import fermata.decoder.prompt.PromptStep.TurnFaces;
import java.util.ArrayList;
import java.util.List;

/**
 * The drill: some four minutes in an order made for identification. Every quarter turn comes five times or more with a
 * pause, each time after another turn, so that what belongs to the newest turn differs from what belongs to the one
 * before; and the last third asks for all of them again, to prove on what was learned before.
 */
public final class PromptScript {
    private static final int QUARTERS = 12;

    /** Steps through the twelve turns that visit all of them, each time after another one. */
    private static final int[] LEARNING_STRIDES = {1, 5, 7};

    private static final int[] PROVING_STRIDES = {11, 5};

    private PromptScript() {}

    /** All steps, first to last. */
    public static List<PromptStep> standard() {
        List<PromptStep> steps = new ArrayList<>();
        steps.add(new PromptStep.BeginSolved());
        addRounds(steps, LEARNING_STRIDES, 0);
        addSameAgain(steps);
        addHalves(steps, 1);
        addHalves(steps, 3);
        steps.add(run("R U F' L D' B R' U'"));
        steps.add(new PromptStep.Rest());
        List.of("x", "y", "z", "x'", "y'", "z'").forEach(rotation -> steps.add(new PromptStep.Tilt(rotation)));
        addRounds(steps, PROVING_STRIDES, 1);
        addHalves(steps, 1);
        steps.add(run("L' F U R' B' D L U'"));
        steps.add(new PromptStep.Free());
        return List.copyOf(steps);
    }

    private static void addRounds(List<PromptStep> steps, int[] strides, int shift) {
        int start = shift;
        for (int stride : strides) {
            for (int i = 0; i < QUARTERS; i++) {
                steps.add(single(quarter((start + i * stride) % QUARTERS)));
            }
            start += 3;
        }
    }

    /** Equal turns one after the other: what changes between them is not the turn. */
    private static void addSameAgain(List<PromptStep> steps) {
        for (int quarter : new int[] {0, 3, 6, 9}) {
            steps.add(single(quarter(quarter)));
            steps.add(single(quarter(quarter)));
        }
    }

    private static void addHalves(List<PromptStep> steps, int quarters) {
        for (Face face : Face.values()) {
            Turn quarter = Turn.of(face, quarters);
            steps.add(new TurnFaces(List.of(quarter, quarter), Pace.HALF));
        }
    }

    private static Turn quarter(int index) {
        return Turn.of(Face.values()[index % 6], index < 6 ? 1 : 3);
    }

    private static TurnFaces single(Turn turn) {
        return new TurnFaces(List.of(turn), Pace.SINGLE);
    }

    private static TurnFaces run(String turns) {
        return new TurnFaces(List.of(turns.split(" ")).stream().map(Turn::parse).toList(), Pace.RUN);
    }
}
