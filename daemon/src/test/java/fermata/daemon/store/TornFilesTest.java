package fermata.daemon.store;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.stream.RawFrame;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a power cut may leave: real files of a practice, torn at some byte. */
class TornFilesTest {
    private static final int GROUPS = 40;
    private static final int GROUP_FRAMES = 3;

    @TempDir
    private Path directory;

    private Path pulled;

    /** The files as they are at one moment between two commits, with all commits still in the write-ahead log. */
    @BeforeEach
    void pullThePlug() throws Exception {
        Home living = new Home(directory.resolve("living"));
        pulled = directory.resolve("pulled");
        try (Store store = StoreSamples.open(living)) {
            CaptureJournal journal = store.captures().begin(StoreSamples.start(), "{}", "");
            for (int group = 0; group < GROUPS; group++) {
                journal.append(StoreSamples.frames(1, (long) group * GROUP_FRAMES, (long) (group + 1) * GROUP_FRAMES));
            }
            copy(living.directory(), pulled);
        }
        assertThat(Files.size(wal(pulled))).isPositive();
    }

    @Test
    void shouldKeepEveryCommitBeforeTheTearWhenTheLogIsCutAnywhere() throws Exception {
        Random chance = new Random(3);
        long whole = Files.size(wal(pulled));
        int before = -1;
        for (int cut = 0; cut <= 20; cut++) {
            Path torn = directory.resolve("cut" + cut);
            copy(pulled, torn);
            // From the first commit after the capture's beginning to the last byte, ever further.
            long keep = cut == 20 ? whole : whole / 2 + (whole / 2 * cut + chance.nextInt(2_000)) / 20;
            try (RandomAccessFile file = new RandomAccessFile(wal(torn).toFile(), "rw")) {
                file.setLength(Math.min(whole, keep));
            }

            int kept = keptGroups(torn);

            assertThat(kept).as("cut at " + keep + " of " + whole).isBetween(Math.max(0, before), GROUPS);
            before = kept;
        }
        assertThat(before).isEqualTo(GROUPS);
    }

    @Test
    void shouldKeepEveryCommitBeforeTheTearWhenTheLogEndsInRubbish() throws Exception {
        Random chance = new Random(4);
        for (int trial = 0; trial < 8; trial++) {
            Path torn = directory.resolve("rubbish" + trial);
            copy(pulled, torn);
            long size = Files.size(wal(torn));
            byte[] rubbish = new byte[1 + chance.nextInt(6_000)];
            chance.nextBytes(rubbish);
            try (RandomAccessFile file = new RandomAccessFile(wal(torn).toFile(), "rw")) {
                file.seek(size - rubbish.length);
                file.write(rubbish);
            }

            // A commit takes a page of log or more, 4,120 bytes: the last two are hit at most.
            assertThat(keptGroups(torn)).isBetween(GROUPS - 2, GROUPS - 1);
        }
    }

    @Test
    void shouldSetADatabaseAsideThatLostItsEnd() throws Exception {
        try (Store store = StoreSamples.open(new Home(pulled))) {
            assertThat(store.setAside()).isEmpty();
        }
        Home home = new Home(pulled);
        try (RandomAccessFile file = new RandomAccessFile(home.database().toFile(), "rw")) {
            file.setLength(file.length() / 2);
        }

        try (Store store = StoreSamples.open(home)) {
            assertThat(store.setAside())
                    .hasValueSatisfying(aside -> assertThat(aside).exists());
            assertThat(store.captures().all()).isEmpty();
            store.captures().begin(StoreSamples.start(), "{}", "").append(StoreSamples.frames(1, 0, 3));
        }
        assertThat(keptGroups(pulled)).isEqualTo(1);
    }

    /** How many commits are there, after a check that each is whole and none is missing between. */
    private static int keptGroups(Path home) {
        try (Store store = StoreSamples.open(new Home(home))) {
            assertThat(store.setAside()).isEmpty();
            long last = store.captures().all().stream()
                    .mapToLong(CaptureRow::id)
                    .max()
                    .orElse(1);
            List<RawFrame> frames = store.captures().frames(last);
            assertThat(frames.size() % GROUP_FRAMES).isZero();
            for (int ordinal = 0; ordinal < frames.size(); ordinal++) {
                RawFrame frame = frames.get(ordinal);
                assertThat(frame.bytes())
                        .isEqualTo(StoreSamples.frame(1, ordinal).bytes());
            }
            return frames.size() / GROUP_FRAMES;
        }
    }

    private static Path wal(Path home) {
        return Path.of(new Home(home).database() + "-wal");
    }

    /** By another process: closing a database's file in this one would take SQLite's locks from it. */
    private static void copy(Path from, Path to) throws IOException, InterruptedException {
        assertThat(new ProcessBuilder("cp", "-a", from.toString(), to.toString())
                        .inheritIO()
                        .start()
                        .waitFor())
                .isZero();
    }
}
