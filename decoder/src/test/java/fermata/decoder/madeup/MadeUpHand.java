package fermata.decoder.madeup;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.prompt.Prompt;
import fermata.decoder.prompt.PromptScript;
import fermata.decoder.prompt.PromptStep;
import fermata.decoder.prompt.PromptStep.Pace;
import fermata.decoder.prompt.PromptStep.TurnFaces;
import fermata.decoder.solver.TwoPhaseSolver;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Follows the drill with slips, and turns through an evening. One use: times go on. */
final class MadeUpHand {
    private static final double SLIP = 0.03;

    private static final TwoPhaseSolver SOLVER = new TwoPhaseSolver();

    private final Random random;
    private final boolean halves;
    private final List<MadeTurn> made = new ArrayList<>();
    private final List<Prompt> prompts = new ArrayList<>();
    private CubeState state = CubeState.SOLVED;
    private long now = 1_000_000;

    /** A hand at a device that feels half turns as one, or not. */
    MadeUpHand(boolean halves, Random random) {
        this.halves = halves;
        this.random = random;
    }

    List<MadeTurn> made() {
        return List.copyOf(made);
    }

    List<Prompt> prompts() {
        return List.copyOf(prompts);
    }

    long now() {
        return now;
    }

    void drill() {
        for (PromptStep step : PromptScript.standard()) {
            prompts.add(new Prompt(step, now));
            if (step instanceof TurnFaces faces) {
                wait(300, 900);
                follow(faces);
                wait(400, 900);
            } else if (step instanceof PromptStep.Free) {
                wait(300, 900);
                turnRandomly(20, 150, 600);
                for (Turn turn : SOLVER.solve(state)) {
                    turn(turn, 150, 700);
                }
                wait(1000, 2000);
            } else {
                wait(step instanceof PromptStep.Rest ? 30_000 : 1500, step instanceof PromptStep.Rest ? 60_000 : 2500);
            }
        }
    }

    void evening() {
        for (int solve = 0; solve < 12; solve++) {
            turnRandomly(20, 250, 600);
            wait(3000, 15_000);
            turnRandomly(45 + random.nextInt(20), 110, 500);
            wait(5000, 20_000);
        }
    }

    private void follow(TurnFaces faces) {
        int slipAt = random.nextDouble() < SLIP ? random.nextInt(faces.turns().size()) : -1;
        boolean takenBack = random.nextBoolean();
        if (faces.pace() == Pace.HALF && slipAt < 0) {
            half(faces.turns().get(0));
            return;
        }
        for (int i = 0; i < faces.turns().size(); i++) {
            Turn asked = faces.turns().get(i);
            if (i == slipAt) {
                Turn wrong = wrong(asked);
                turn(wrong, 0, 50);
                if (!takenBack) {
                    continue;
                }
                turn(wrong.inverse(), 500, 900);
                wait(300, 600);
            }
            turn(asked, 90, 220);
        }
    }

    private Turn wrong(Turn asked) {
        Turn drawn = asked;
        while (drawn.equals(asked) || drawn.quarters() == 2) {
            drawn = Turn.ofIndex(random.nextInt(18));
        }
        return drawn;
    }

    private void turnRandomly(int count, int leastMillis, int mostMillis) {
        Turn last = Turn.ofIndex(0);
        for (int i = 0; i < count; i++) {
            Turn next = last;
            while (next.face() == last.face()) {
                next = Turn.ofIndex(random.nextInt(18));
            }
            // Now and then a slice: two opposite faces nearly at once.
            boolean slice = next.face() == last.face().opposite() && random.nextBoolean();
            turn(next, slice ? 4 : leastMillis, slice ? 25 : mostMillis);
            last = next;
        }
    }

    private void turn(Turn turn, int leastMillis, int mostMillis) {
        wait(leastMillis, mostMillis);
        if (turn.quarters() == 2) {
            half(Turn.of(turn.face(), random.nextBoolean() ? 1 : 3));
        } else {
            feel(turn);
        }
    }

    private void half(Turn quarter) {
        if (!halves) {
            feel(quarter);
            wait(60, 130);
            feel(quarter);
            return;
        }
        wait(60, 130);
        feel(Turn.of(quarter.face(), 2));
    }

    private void feel(Turn turn) {
        made.add(new MadeTurn(turn, now));
        state = state.apply(turn);
    }

    private void wait(int leastMillis, int mostMillis) {
        now += 1000L * leastMillis + random.nextInt(1000 * (mostMillis - leastMillis) + 1);
    }
}
