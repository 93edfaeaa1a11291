package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.event.Hand;
import fermata.analysis.event.Origin;
import fermata.daemon.capture.CapturedItem;
import fermata.daemon.capture.HeardFrame;
import fermata.daemon.demo.Rehearsal;
import fermata.daemon.store.CaptureJournal;
import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.CaptureStart;
import fermata.daemon.store.Home;
import fermata.daemon.store.Missing;
import fermata.daemon.store.Store;
import fermata.daemon.store.ToldEvent;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.OpenLayout;
import fermata.decoder.stream.OpenLayout.MadeTurn;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.UUID;

/**
 * One home, damaged in a way that a seed decides, and what must hold of it: no command ends in a stack trace, reading
 * moves nothing, listening begins again, and every frame and event that was acknowledged is there after {@code recover}
 * or among what is named as missing.
 */
final class DamagedHomes {
    private static final LocalDateTime NOW = LocalDateTime.of(2026, 11, 25, 20, 0);
    private static final int GROUPS = 60;
    private static final int GROUP_FRAMES = 5;
    private static final String[] DERIVED = {
        "night json",
        "night day",
        "solve summary",
        "solve json",
        "solve day",
        "account json",
        "account outcome",
        "rhythm began_from",
        "snapshot json",
        "derivation extent",
    };

    private final Path directory;
    private final Path folded;
    private final Path pulled;
    private final Set<String> acknowledged = new HashSet<>();

    /** What a trial came to. */
    enum Kind {
        HEADER,
        PAGE_BYTE,
        PAGE_BLOCK,
        END_CUT,
        LOG_BYTE,
        LOG_CUT,
        COUNT_BYTE,
        DERIVED
    }

    /**
     * What became of a damaged home.
     *
     * @param readable how many of the reading commands answered before anything was recovered
     * @param missing how many rows were named as missing at the end
     */
    record Came(Kind kind, int readable, long missing, boolean wasSetAside) {}

    /** Makes the home: a file's evening, and two captures from the radio; once folded, once with all in its log. */
    DamagedHomes(Path directory) throws IOException, InterruptedException, SQLException {
        this.directory = directory;
        Path living = directory.resolve("living");
        CommandRig rig = new CommandRig(living);
        String evening = String.join("\n", Rehearsal.evening(2, 9).lines());
        assertThat(rig.runPiped(evening, "import", "-").code()).isZero();
        assertThat(rig.run("solves").code()).isZero();
        try (Store store = Store.openForWriting(new Home(living), () -> NOW)) {
            hear(store, "2026-11-24T20:00:00Z", 0);
            hear(store, "2026-11-24T21:00:00Z", GROUPS / 2);
            copy(living, directory.resolve("pulled"));
            for (CaptureRow capture : store.captures().all()) {
                acknowledged.addAll(rows(store, capture));
            }
        }
        assertThat(rig.run("solves").code()).isZero();
        folded = living;
        pulled = directory.resolve("pulled");
        assertThat(new Home(pulled).directory().resolve("practice.db-wal")).isNotEmptyFile();
        assertThat(acknowledged).hasSizeGreaterThan(GROUPS * GROUP_FRAMES);
    }

    private static void hear(Store store, String begun, int fromGroup) {
        CaptureStart start = new CaptureStart(
                UUID.randomUUID(),
                "boot",
                Instant.parse(begun),
                5_000_000_000L,
                ZoneId.of("Europe/Oslo"),
                new Origin("galley cube", "cook", Hand.LEFT),
                "radio");
        CaptureJournal journal = store.captures().begin(start, OpenLayout.profileText(), "");
        List<MadeTurn> made = new ArrayList<>();
        for (int group = fromGroup; group < GROUPS; group++) {
            List<CapturedItem> items = new ArrayList<>();
            for (int i = 0; i < GROUP_FRAMES; i++) {
                made.add(new MadeTurn(Turn.ofIndex(made.size() * 7 % 18), 2_000 + made.size() * 300L));
                byte[] bytes = OpenLayout.encodeTurns(made.size(), 1, made);
                items.add(new HeardFrame(
                        1,
                        made.size() - 1L,
                        OpenLayout.TURNS.toString(),
                        7_000_000_000L + made.size() * 300_000_000L,
                        bytes));
            }
            journal.append(items);
        }
    }

    private static Set<String> rows(Store store, CaptureRow capture) {
        Set<String> rows = new HashSet<>();
        String name = capture.start().startedWall() + " ";
        for (fermata.decoder.stream.RawFrame frame : store.captures().frames(capture.id())) {
            rows.add(name + frame.arrivalNanos() + " " + HexFormat.of().formatHex(frame.bytes()) + " "
                    + frame.characteristic());
        }
        // Lines that are the same are told apart by how many there are, not by their places: those before may be gone.
        for (ToldEvent event : store.captures().events(capture.id())) {
            int same = 0;
            while (!rows.add(name + same + " " + event.line())) {
                same++;
            }
        }
        return rows;
    }

    /** Damages a copy and checks all that must hold. */
    Came trial(long seed) throws IOException, InterruptedException, SQLException {
        Random chance = new Random(seed * 0x9E3779B97F4A7C15L);
        Kind kind = Kind.values()[chance.nextInt(Kind.values().length)];
        boolean isStale = chance.nextInt(3) == 0;
        Path home = directory.resolve("trial" + seed);
        copy(kind == Kind.LOG_BYTE || kind == Kind.LOG_CUT || isStale && chance.nextBoolean() ? pulled : folded, home);
        damage(home, kind, isStale, chance);
        CommandRig rig = new CommandRig(home);
        int readable = 0;
        for (String command : List.of("solves", "night", "cases", "show 1-12", "solves --json")) {
            CommandRig.Outcome outcome = rig.run(command.split(" "));
            assertHonest(outcome, seed + " " + kind + " " + command);
            readable += outcome.code() == 0 ? 1 : 0;
        }
        assertThat(setAside(home))
                .as("%d %s: reading moved something", seed, kind)
                .isEmpty();
        if (kind == Kind.DERIVED) {
            assertThat(readable).as("%d: derived rows are derived again", seed).isGreaterThanOrEqualTo(4);
        }
        boolean wasSetAside = listen(home, seed + " " + kind);
        CommandRig.Outcome recover = rig.run("recover", "--json");
        assertThat(recover.code())
                .as("%d %s recover: %s", seed, kind, recover.err())
                .isZero();
        assertHonest(recover, seed + " " + kind + " recover");
        CommandRig.Outcome again = rig.run("recover");
        assertThat(again.out()).as("%d %s again", seed, kind).doesNotContain("came back");
        CommandRig.Outcome solves = rig.run("solves");
        assertThat(solves.code())
                .as("%d %s afterwards: %s", seed, kind, solves.err())
                .isZero();
        long missing = compare(home, seed + " " + kind, solves.err());
        delete(home);
        return new Came(kind, readable, missing, wasSetAside);
    }

    private static void assertHonest(CommandRig.Outcome outcome, String what) {
        assertThat(outcome.err()).as(what).doesNotContain("fault of fermata", "\tat ", "Exception");
        assertThat(outcome.code()).as(what + ": " + outcome.err()).isIn(0, 2);
        if (outcome.code() == 2) {
            assertThat(outcome.err()).as(what).isNotBlank();
        }
    }

    private void damage(Path home, Kind kind, boolean isStale, Random chance) throws IOException, SQLException {
        Path database = home.resolve("practice.db");
        if (kind == Kind.DERIVED) {
            damageDerived(database, chance);
            return;
        }
        if (isStale && kind != Kind.LOG_BYTE && kind != Kind.LOG_CUT) {
            // Closing the connection folds the log.
            alter(database, "UPDATE derivation SET code_version = 'older'");
        }
        Path log = home.resolve("practice.db-wal");
        switch (kind) {
            case HEADER -> flip(database, 0, 100, 1, chance);
            case PAGE_BYTE -> flip(database, 100, Files.size(database), 1, chance);
            case PAGE_BLOCK -> flip(database, 100, Files.size(database) - 512, 512, chance);
            case END_CUT -> cut(database, chance);
            case LOG_BYTE -> flip(log, 0, Files.size(log), 1, chance);
            case LOG_CUT -> cut(log, chance);
            case COUNT_BYTE -> flip(home.resolve("practice.count"), 0, 1024, 1, chance);
            case DERIVED -> throw new IllegalStateException("done above");
            default -> throw new IllegalStateException("kind " + kind);
        }
    }

    private static void damageDerived(Path database, Random chance) throws SQLException {
        String[] place = DERIVED[chance.nextInt(DERIVED.length)].split(" ");
        String bad = new String[] {"x", "{", "\"", "9", "\u0001"}[chance.nextInt(5)];
        String sql = "UPDATE " + place[0] + " SET " + place[1] + " = substr(" + place[1] + ", 1, " + "length("
                + place[1] + ") * " + chance.nextInt(100) + " / 100) || '" + bad + "' || substr(" + place[1]
                + ", length(" + place[1] + ") * " + chance.nextInt(100) + " / 100 + 2)";
        alter(database, sql);
    }

    private static void alter(Path database, String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + database);
                Statement statement = connection.createStatement()) {
            statement.executeUpdate("PRAGMA wal_autocheckpoint = 0");
            statement.executeUpdate(sql);
        }
    }

    private static void flip(Path file, long from, long to, int bytes, Random chance) throws IOException {
        if (!Files.exists(file)) {
            return;
        }
        try (RandomAccessFile damaged = new RandomAccessFile(file.toFile(), "rw")) {
            long at = from + (long) (chance.nextDouble() * (to - from));
            byte[] there = new byte[bytes];
            damaged.seek(at);
            damaged.readFully(there);
            if (bytes == 1) {
                there[0] ^= (byte) (1 << chance.nextInt(8));
            } else {
                chance.nextBytes(there);
            }
            damaged.seek(at);
            damaged.write(there);
        }
    }

    private static void cut(Path file, Random chance) throws IOException {
        if (Files.exists(file)) {
            try (RandomAccessFile damaged = new RandomAccessFile(file.toFile(), "rw")) {
                damaged.setLength((long) (damaged.length() * chance.nextDouble()));
            }
        }
    }

    /** As {@code listen} opens and checks it, with some more that is heard. */
    private static boolean listen(Path home, String what) {
        try (Store store = Store.openForWriting(new Home(home), () -> NOW)) {
            hear(store, "2026-11-25T20:00:00Z", GROUPS - 2);
            store.rowCheck().run((done, left) -> {});
            assertThat(store.captures().all()).as(what).isNotEmpty();
            return store.setAside().isPresent();
        }
    }

    /** Everything that was acknowledged is there, or is counted as missing, and that is said. */
    private long compare(Path home, String what, String said) {
        try (Store store = Store.openForReading(new Home(home))) {
            Set<String> there = new HashSet<>();
            for (CaptureRow capture : store.captures().all()) {
                there.addAll(rows(store, capture));
            }
            Set<String> lost = new HashSet<>(acknowledged);
            lost.removeAll(there);
            long missing = store.missing().stream().mapToLong(Missing::count).sum();
            boolean isLeftOut = said.contains("is left out; its frames are kept");
            if (!lost.isEmpty() && !isLeftOut) {
                assertThat(missing).as("%s: %d rows lost", what, lost.size()).isEqualTo(lost.size());
            }
            if (!lost.isEmpty()) {
                assertThat(said).as("%s: what is missing is named", what).contains("warning: ");
            }
            return lost.size();
        }
    }

    private static List<Path> setAside(Path home) throws IOException {
        List<Path> found = new ArrayList<>();
        try (DirectoryStream<Path> files = Files.newDirectoryStream(home, "*.damaged-*")) {
            files.forEach(found::add);
        }
        return found;
    }

    /** By another process: closing a database's file in this one would take SQLite's locks from it. */
    private static void copy(Path from, Path to) throws IOException, InterruptedException {
        run("cp", "-a", from.toString(), to.toString());
    }

    private static void delete(Path home) throws IOException, InterruptedException {
        run("rm", "-r", home.toString());
    }

    private static void run(String... command) throws IOException, InterruptedException {
        assertThat(new ProcessBuilder(command).inheritIO().start().waitFor()).isZero();
    }
}
