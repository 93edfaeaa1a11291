package fermata.daemon.live;

import fermata.daemon.process.OwnProcess;
import fermata.decoder.cube.Turn;
import java.util.List;
import java.util.stream.Stream;

/** Has scrambles made by a process of its own, which takes the solver's tables with it when it ends. Stateless. */
public final class ScrambleProcess {
    private static final int HEAP_MEGABYTES = 96;

    private ScrambleProcess() {}

    /** Makes so many scrambles of random states; takes a few seconds. */
    public static List<Scramble> make(int count) {
        return OwnProcess.run(HEAP_MEGABYTES, List.of("scramble", "--count=" + count))
                .lines()
                .map(ScrambleProcess::read)
                .toList();
    }

    private static Scramble read(String line) {
        return new Scramble(Stream.of(line.split(" ")).map(Turn::parse).toList());
    }
}
