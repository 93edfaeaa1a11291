package fermata.daemon.recording;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Names the time since the machine was last started: only within it can monotonic times be compared. */
final class BootId {
    /** random(4), "/proc/sys/kernel/random/boot_id". */
    private static final Path FILE = Path.of("/proc/sys/kernel/random/boot_id");

    private BootId() {}

    static String now() {
        try {
            return Files.readString(FILE).strip();
        } catch (IOException notLinux) {
            return "unknown";
        }
    }
}
