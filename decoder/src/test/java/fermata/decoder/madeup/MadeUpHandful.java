package fermata.decoder.madeup;

import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Turns that were made before anybody listened; their times count back. */
record MadeUpHandful(Random random) {
    List<MadeTurn> turns(int count) {
        List<MadeTurn> turns = new ArrayList<>();
        long back = 0;
        for (int i = 0; i < count; i++) {
            back += 200_000 + random.nextInt(400_000);
            turns.add(new MadeTurn(Turn.of(Face.values()[random.nextInt(6)], random.nextBoolean() ? 1 : 3), back));
        }
        return turns;
    }
}
