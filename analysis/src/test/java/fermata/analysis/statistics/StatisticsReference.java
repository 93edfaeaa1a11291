package fermata.analysis.statistics;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/** Values computed with R 4.2.2, mclust 6.0.0 and mixtools 2.0.0; see `replay-fixtures`. */
public final class StatisticsReference {
    private StatisticsReference() {}

    /** One value by its name. */
    public static double value(String key) {
        return lines("stats_reference.csv").stream()
                .map(line -> line.replace("\"", ""))
                .filter(line -> line.startsWith(key + ","))
                .mapToDouble(line -> Double.parseDouble(line.substring(key.length() + 1)))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no reference value " + key));
    }

    static double[] input(String name) {
        String line = lines("stats_inputs.csv").stream()
                .filter(row -> row.startsWith(name + ","))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no input " + name));
        String values = line.substring(name.length() + 1).replace("\"", "");
        return Arrays.stream(values.split(" ")).mapToDouble(Double::parseDouble).toArray();
    }

    /** A column of numbers of a table, from 0. */
    public static double[] column(String table, int column) {
        return lines(table).stream()
                .skip(1)
                .mapToDouble(line -> Double.parseDouble(line.split(",")[column]))
                .toArray();
    }

    static int[][] bootstrapIndices() {
        return lines("bootstrap_indices_999x12.csv").stream()
                .map(line -> Arrays.stream(line.split(","))
                        .mapToInt(index -> Integer.parseInt(index) - 1)
                        .toArray())
                .toArray(int[][]::new);
    }

    private static List<String> lines(String table) {
        try (InputStream stream =
                StatisticsReference.class.getResourceAsStream("/fermata/fixtures/reference/" + table)) {
            if (stream == null) {
                throw new IllegalStateException("no reference table " + table + " on the class path");
            }
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
