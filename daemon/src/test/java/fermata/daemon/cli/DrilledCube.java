package fermata.daemon.cli;

import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.prompt.Prompt;
import fermata.decoder.prompt.PromptScript;
import fermata.decoder.prompt.PromptStep;
import fermata.decoder.prompt.PromptedRecording;
import fermata.decoder.prompt.PromptedText;
import fermata.decoder.stream.RawFrame;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import java.util.function.UnaryOperator;

/**
 * A made-up cube in a drill, without a slip or a loss: a frame of a code (1 to 12), a number of eight bits and a clock
 * of sixteen in milliseconds, which {@code written} may change before it is sent. One use.
 */
final class DrilledCube {
    static final UUID CHARACTERISTIC = UUID.fromString("b3cb4267-3d05-43d3-a261-fbfdfbcd347f");

    private static final int FREE_TURNS = 25;

    private final UnaryOperator<byte[]> written;
    private final Random random = new Random(17);
    private final List<Prompt> prompts = new ArrayList<>();
    private final List<RawFrame> values = new ArrayList<>();
    private final List<Turn> made = new ArrayList<>();
    private long nowMillis;

    DrilledCube(UnaryOperator<byte[]> written) {
        this.written = written;
    }

    /** The drill's recording as lines. */
    List<String> lines() {
        for (PromptStep step : PromptScript.standard()) {
            prompts.add(new Prompt(step, nowMillis * 1000));
            rest(400);
            if (step instanceof PromptStep.TurnFaces faces) {
                faces.turns().forEach(this::turn);
            } else if (step instanceof PromptStep.Free) {
                turnAndTakeBack();
            }
            rest(600);
        }
        return PromptedText.lines(new PromptedRecording(
                "Galley cube", List.of(CHARACTERISTIC), false, prompts, values, (nowMillis + 1000) * 1000));
    }

    /** How many turns were made. */
    int turnsMade() {
        return made.size();
    }

    /** All that the drill did is undone, which solves the cube whatever was asked for. */
    private void turnAndTakeBack() {
        for (int i = 0; i < FREE_TURNS; i++) {
            turn(Turn.of(Face.values()[random.nextInt(6)], random.nextBoolean() ? 1 : 3));
        }
        List<Turn> soFar = List.copyOf(made);
        for (int i = soFar.size() - 1; i >= 0; i--) {
            turn(soFar.get(i).inverse());
        }
    }

    private void turn(Turn turn) {
        rest(100);
        made.add(turn);
        int code = 1 + turn.face().ordinal() * 2 + (turn.quarters() == 1 ? 0 : 1);
        byte[] frame = {(byte) code, (byte) made.size(), (byte) nowMillis, (byte) (nowMillis >> 8)};
        long arrivalNanos = (nowMillis + random.nextInt(20)) * 1_000_000;
        values.add(new RawFrame(0, CHARACTERISTIC, arrivalNanos, written.apply(frame)));
        rest(30);
    }

    private void rest(int leastMillis) {
        nowMillis += leastMillis + random.nextInt(leastMillis);
    }
}
