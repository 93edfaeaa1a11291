package fermata.decoder;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Rows of a table in {@code replay-fixtures}, its heading left out; quoted fields may hold commas. */
public final class ReferenceTable {
    private ReferenceTable() {}

    public static Stream<List<String>> rows(String name) {
        InputStream stream = ReferenceTable.class.getResourceAsStream("/fermata/fixtures/reference/" + name);
        if (stream == null) {
            throw new IllegalStateException("no reference table " + name + " on the class path");
        }
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
            return reader.lines().skip(1).map(ReferenceTable::fields).toList().stream();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static List<String> fields(String line) {
        List<String> fields = new ArrayList<>();
        StringBuilder field = new StringBuilder();
        boolean quoted = false;
        for (char letter : line.toCharArray()) {
            if (letter == '"') {
                quoted = !quoted;
            } else if (letter == ',' && !quoted) {
                fields.add(field.toString());
                field.setLength(0);
            } else {
                field.append(letter);
            }
        }
        fields.add(field.toString());
        return fields;
    }
}
