package fermata.daemon;

import static java.util.stream.Collectors.toSet;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * What the documents name is there: packages, classes, files, headings. The truth is the tree itself.
 *
 * <p>Checked are README, DEVELOPERS, all of {@code docs} and the module's README that describes data; and the names of
 * documents in the code.
 */
class NamedPlacesTest {
    private static final Path ROOT = Path.of("..");
    private static final List<String> MODULES = List.of("decoder", "analysis", "daemon", "replay-fixtures");

    /** {@code fermata.analysis.rest} anywhere, {@code analysis.rest} where it is set as code; a type may follow. */
    private static final Pattern PACKAGE =
            Pattern.compile("(?<![\\w./-])(?:fermata\\.(?=decoder|analysis|daemon|rehearsal)"
                    + "|(?<=`|\\{@code )(?=(?:decoder|analysis|daemon)\\.))([a-z]+(?:\\.[a-z]+)*)(?:\\.([A-Z]\\w*))?");

    private static final Pattern LINK = Pattern.compile("]\\(([^)\\s]+)\\)");
    private static final Pattern DOCUMENT = Pattern.compile("(?<![\\w/-])docs/[\\w/.-]*\\w");
    private static final Pattern FILE =
            Pattern.compile("`((?:docs|decoder|analysis|daemon|replay-fixtures|\\.config)/" + "(?!target)[^`*\\s]*)`");

    /** Two words at least, for one may be any name. */
    private static final Pattern TYPE = Pattern.compile("`([A-Z][a-z0-9]+(?:[A-Z][a-z0-9]*)+)[`.]");

    /** In a drawing whatever is said to be a type. */
    private static final Pattern DRAWN_TYPE = Pattern.compile("class=\"type\"[^>]*>([^<]+)<");

    /** Said there as {@code analysis: hand, hold.lattice}. */
    private static final Pattern DRAWN_ROOM = Pattern.compile("class=\"room\"[^>]*>([a-z]+)(?:: ([^<]+))?<");

    /** Set as code, and not of this house: a cookie's word and a line of BlueZ's settings. */
    private static final Set<String> OF_OTHERS = Set.of("HttpOnly", "ConnectionSupervisionTimeout");

    @Test
    void shouldFindEachPackageWhenADocumentNamesIt() {
        List<String> missing = new ArrayList<>();
        for (Path file : both(documents(), code())) {
            for (MatchResult named : all(PACKAGE, file)) {
                String folder = "fermata/" + named.group(1).replace('.', '/');
                String type = named.group(2) == null ? "" : "/" + named.group(2) + ".java";
                if (MODULES.stream().noneMatch(module -> isJava(module, folder + type))) {
                    missing.add(file + " names " + named.group());
                }
            }
        }
        assertThat(missing).isEmpty();
    }

    @Test
    void shouldFindEachRoomWhenADrawingNamesIt() {
        List<String> drawn = new ArrayList<>();
        for (Path file : documents()) {
            for (MatchResult place : all(DRAWN_ROOM, file)) {
                String rooms = place.group(2) == null ? "" : place.group(2);
                Stream.of(rooms.split(", "))
                        .map(room -> "fermata/" + place.group(1) + "/" + room.replace('.', '/'))
                        .forEach(drawn::add);
            }
        }
        assertThat(drawn).isNotEmpty().allMatch(room -> MODULES.stream().anyMatch(module -> isJava(module, room)));
    }

    private static boolean isJava(String module, String name) {
        return Stream.of("main", "test")
                .anyMatch(kind -> Files.exists(ROOT.resolve(module + "/src/" + kind + "/java/" + name)));
    }

    @Test
    void shouldFindFileAndHeadingWhenADocumentLinksThere() {
        List<String> broken = new ArrayList<>();
        for (Path file : documents()) {
            for (MatchResult link : all(LINK, file)) {
                if (!link.group(1).matches("[a-z]+:.*") && !leads(file, link.group(1))) {
                    broken.add(file + " links to " + link.group(1));
                }
            }
        }
        assertThat(broken).isEmpty();
    }

    private static boolean leads(Path from, String link) {
        String[] parts = link.split("#", 2);
        Path to = parts[0].isEmpty() ? from : from.resolveSibling(parts[0]);
        return Files.exists(to)
                && (parts.length == 1
                        || all(Pattern.compile("(?m)^#+ (.+)$"), to).stream()
                                .anyMatch(heading -> anchor(heading.group(1)).equals(parts[1])));
    }

    /** As a heading is linked to where Markdown is shown: lower case, no signs, dashes for spaces. */
    private static String anchor(String heading) {
        return heading.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9 _-]", "").replace(' ', '-');
    }

    @Test
    void shouldFindEachFileWhenADocumentOrTheCodeNamesIt() {
        List<String> missing = new ArrayList<>();
        for (Path file : documents()) {
            all(FILE, file).stream()
                    .filter(named -> Files.notExists(ROOT.resolve(named.group(1))))
                    .forEach(named -> missing.add(file + " names " + named.group(1)));
        }
        for (Path file : code()) {
            all(DOCUMENT, file).stream()
                    .filter(named -> !isDocument(named.group()))
                    .forEach(named -> missing.add(file + " names " + named.group()));
        }
        assertThat(missing).isEmpty();
    }

    /** A decision may be named by its number alone. */
    private static boolean isDocument(String name) {
        Path file = ROOT.resolve(name);
        return Files.exists(file)
                || name.matches("docs/decisions/\\d{4}")
                        && files(ROOT.resolve("docs/decisions"))
                                .anyMatch(each -> each.getFileName().toString().startsWith(name.substring(15)));
    }

    @Test
    void shouldFindEachTypeWhenADocumentOrADrawingNamesIt() {
        Set<String> types = code().stream()
                .map(file -> file.getFileName().toString())
                .filter(name -> name.endsWith(".java"))
                .map(name -> name.substring(0, name.length() - ".java".length()))
                .collect(toSet());
        types.addAll(OF_OTHERS);
        List<String> missing = new ArrayList<>();
        for (Path file : documents()) {
            all(TYPE, file).stream()
                    .filter(named -> !types.contains(named.group(1)))
                    .forEach(named -> missing.add(file + " names " + named.group(1)));
            all(DRAWN_TYPE, file).stream()
                    .flatMap(drawn -> Stream.of(drawn.group(1).trim().split("[^A-Za-z]+")))
                    .filter(name -> !types.contains(name))
                    .forEach(name -> missing.add(file + " draws " + name));
        }
        assertThat(missing).isEmpty();
    }

    private static List<Path> documents() {
        List<Path> written = files(ROOT.resolve("docs"))
                .filter(file -> file.toString().matches(".*\\.(md|svg)"))
                .toList();
        return both(
                List.of(
                        ROOT.resolve("README.md"),
                        ROOT.resolve("DEVELOPERS.md"),
                        ROOT.resolve("replay-fixtures/README.md")),
                written);
    }

    private static List<Path> code() {
        return MODULES.stream()
                .flatMap(module -> files(ROOT.resolve(module + "/src")))
                .filter(file -> file.toString().matches(".*\\.(java|mjs|sql|css)"))
                .toList();
    }

    private static List<Path> both(List<Path> some, List<Path> others) {
        return Stream.concat(some.stream(), others.stream()).toList();
    }

    private static List<MatchResult> all(Pattern pattern, Path file) {
        try {
            Matcher matcher = pattern.matcher(Files.readString(file));
            return matcher.results().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Stream<Path> files(Path folder) {
        try (Stream<Path> found = Files.walk(folder)) {
            return found.filter(Files::isRegularFile).toList().stream();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
