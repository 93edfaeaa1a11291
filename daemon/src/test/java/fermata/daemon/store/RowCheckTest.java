package fermata.daemon.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A bit that the disk altered is named though nobody reads its practice, and goes on being named. */
class RowCheckTest {
    private static final Missing FIFTH_FRAME = new Missing(Missing.Kind.FRAME, 5, 5);

    @TempDir
    Path directory;

    private Home home;

    @BeforeEach
    void setUp() {
        home = new Home(directory.resolve("home"));
        try (Store store = StoreSamples.open(home)) {
            store.captures().begin(StoreSamples.start(), "{}", "").append(StoreSamples.frames(1, 0, 10));
            store.captures().begin(StoreSamples.start(), "{}", "").append(StoreSamples.frames(1, 0, 10));
            store.captures().append(2, List.of(new ToldEvent("mark", 1, "one"), new ToldEvent("mark", 1, "the other")));
        }
    }

    @Test
    void shouldFindNothingWhenAllIsAsItWasKept() {
        List<String> told = new ArrayList<>();
        try (Store store = StoreSamples.open(home)) {
            store.rowCheck().run((done, left) -> told.add(done + " of " + (done + left)));

            assertThat(store.missing()).isEmpty();
            assertThat(store.warnings()).isEmpty();
        }
        assertThat(told).containsExactly("0 of 2", "1 of 2");
    }

    @Test
    void shouldNameAnAlteredFrameFromThenOnUntilItIsDismissed() throws Exception {
        alter("frame", "bytes = x'00' WHERE capture_id = 1 AND ordinal = 4");
        check();

        assertThat(missing()).containsExactly(FIFTH_FRAME);
        StoreSamples.open(home).close();
        assertThat(missing()).as("opened to write once more").containsExactly(FIFTH_FRAME);
        try (Store store = StoreSamples.open(home)) {
            assertThat(store.warnings()).singleElement().asString().startsWith("1 frame (5) was acknowledged");
            store.dismiss();
        }
        check();
        assertThat(missing()).as("dismissed and checked again").isEmpty();
    }

    @Test
    void shouldNameThoseThatAreGoneAndThoseThatAreAlteredOnceEach() throws Exception {
        alter("frame", "bytes = x'00' WHERE capture_id = 1 AND ordinal IN (3, 6)");
        sql("DELETE FROM frame WHERE capture_id = 1 AND ordinal IN (4, 5)");
        check();
        StoreSamples.open(home).close();

        assertThat(missing().stream().mapToLong(Missing::count).sum()).isEqualTo(4);
        assertThat(new Missing(Missing.Kind.FRAME, 4, 7).without(missing())).isEmpty();
    }

    /** What was altered may be the very number. */
    @Test
    void shouldNameTheFrameWhoseNumberWasAlteredAndNoOther() throws Exception {
        for (long number : new long[] {70_000, 3, 8}) {
            alter("frame", "number = " + number + " WHERE capture_id = 1 AND ordinal = 4");
            check();
            StoreSamples.open(home).close();

            assertThat(missing()).as("5 became %d", number).containsExactly(FIFTH_FRAME);
        }
    }

    @Test
    void shouldNameAnAlteredEvent() throws Exception {
        alter("event", "line = 'the othes' WHERE ordinal = 1");
        check();
        StoreSamples.open(home).close();

        assertThat(missing()).containsExactly(new Missing(Missing.Kind.EVENT, 2, 2));
    }

    @Test
    void shouldForgetWhatIsAsItWasKeptAgain() throws Exception {
        alter("event", "line = 'the othes' WHERE ordinal = 1");
        check();
        alter("event", "line = 'the other' WHERE ordinal = 1");
        StoreSamples.open(home).close();

        assertThat(missing()).isEmpty();
    }

    @Test
    void shouldNameItToOneWhoOnlyReads() throws Exception {
        alter("frame", "bytes = x'00' WHERE capture_id = 1 AND ordinal = 4");

        try (Store store = Store.openForReading(home)) {
            assertThat(store.missing()).as("nobody has looked").isEmpty();
            store.rowCheck().run((done, left) -> {});
            store.rowCheck().run((done, left) -> {});
            assertThat(store.missing()).containsExactly(FIFTH_FRAME);
        }
    }

    @Test
    void shouldKeepWhatWasFoundWhenItIsEndedEarly() throws Exception {
        alter("frame", "bytes = x'00' WHERE capture_id = 1 AND ordinal = 4");
        try (Store store = StoreSamples.open(home)) {
            assertThatThrownBy(() -> store.rowCheck().run((done, left) -> {
                        if (done == 1) {
                            throw new CancellationException("closed");
                        }
                    }))
                    .isInstanceOf(CancellationException.class);
        }

        assertThat(missing()).containsExactly(FIFTH_FRAME);
    }

    private void check() {
        try (Store store = StoreSamples.open(home)) {
            store.rowCheck().run((done, left) -> {});
        }
    }

    private List<Missing> missing() {
        try (Store store = Store.openForReading(home)) {
            return store.missing();
        }
    }

    private void alter(String table, String setting) throws SQLException {
        String trigger = table + "_is_append_only";
        sql("DROP TRIGGER " + trigger);
        sql("UPDATE " + table + " SET " + setting);
        sql("CREATE TRIGGER " + trigger + " BEFORE UPDATE ON " + table + "\nBEGIN SELECT RAISE(ABORT, '" + table
                + "s are appended, never altered'); END");
    }

    private void sql(String statement) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + home.database());
                Statement altering = connection.createStatement()) {
            altering.executeUpdate(statement);
        }
    }
}
