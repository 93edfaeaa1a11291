package fermata.daemon.civil;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;

/**
 * Asks the machine's battery clocks. One without a battery begins at a fixed old date, and then the system's date,
 * which is at least that of the last shutdown, does not agree with it.
 */
final class BatteryClock {
    /** Such a clock may be off by some seconds a day, and is read a second late at most. */
    private static final Duration CLOSE = Duration.ofMinutes(1);

    private final Path directory;

    /**
     * @param directory the kernel's class of such clocks
     */
    BatteryClock(Path directory) {
        this.directory = directory;
    }

    /** The system's own. */
    static BatteryClock ofSystem() {
        return new BatteryClock(Path.of("/sys/class/rtc"));
    }

    /** Whether one of them says the same. */
    boolean agrees(Instant wall) {
        try (DirectoryStream<Path> clocks = Files.newDirectoryStream(directory)) {
            for (Path clock : clocks) {
                if (Duration.between(wall, read(clock.resolve("since_epoch")))
                                .abs()
                                .compareTo(CLOSE)
                        < 0) {
                    return true;
                }
            }
            return false;
        } catch (IOException | NumberFormatException noneThatCanBeRead) {
            return false;
        }
    }

    private static Instant read(Path file) throws IOException {
        return Instant.ofEpochSecond(Integer.toUnsignedLong(
                (int) Long.parseLong(Files.readString(file).strip())));
    }
}
