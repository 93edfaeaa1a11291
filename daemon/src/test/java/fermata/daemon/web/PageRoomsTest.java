package fermata.daemon.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The walls between the rooms of the page files, read from what the files themselves name. */
class PageRoomsTest {
    /**
     * Three floors: what all pages share; the drawn cube and the lines of music, which stand on it; and the pages, none
     * of which knows another.
     */
    private static final Map<String, Set<String>> MAY_USE = Map.of(
            "page", Set.of(),
            "cube", Set.of("page"),
            "staff", Set.of("page"),
            "night", Set.of("page"),
            "cases", Set.of("cube", "page"),
            "now", Set.of("staff", "cube", "page"),
            "score", Set.of("staff", "cube", "page"));

    private static final Pattern IMPORT = Pattern.compile("(?m)^import .* from \"([^\"]+)\";$");
    private static final Pattern IMPORTED = Pattern.compile("(?m)^import \\{ (.+) } from \"([^\"]+)\";$");
    private static final Pattern EXPORTED = Pattern.compile("(?m)^export (?:async )?(?:function|class|const) (\\w+)");
    private static final Pattern LINK = Pattern.compile("(?:href|src)=\"/site/([^\"]+)\"");

    /** What a program loads and no page does: the score as a plain picture. */
    private static final String PICTURE = "score/alone.mjs";

    private static final Map<String, Set<String>> FILES = filesUsedByFile();

    @Test
    void shouldUseExactlyTheRoomsThatTheTableAllows() {
        Map<String, Set<String>> used = new TreeMap<>();
        FILES.forEach((file, others) -> {
            Set<String> rooms = used.computeIfAbsent(room(file), first -> new TreeSet<>());
            others.stream().map(PageRoomsTest::room).forEach(rooms::add);
            rooms.remove(room(file));
        });

        // Both ways: an arrow that nobody needs any more leaves the table too.
        assertThat(used).isEqualTo(MAY_USE);
    }

    @Test
    void shouldAllowNoRingBetweenRooms() {
        assertThat(inOrUnderARing(MAY_USE)).isEmpty();
    }

    @Test
    void shouldHaveNoRingBetweenFiles() {
        assertThat(inOrUnderARing(FILES)).isEmpty();
    }

    @Test
    void shouldFindARingWhenThereIsOne() {
        Map<String, Set<String>> uses = Map.of(
                "page", Set.of(),
                "cube", Set.of("page", "score"),
                "staff", Set.of("page"),
                "score", Set.of("staff", "cube"));

        assertThat(inOrUnderARing(uses)).containsExactlyInAnyOrder("cube", "score");
    }

    @Test
    void shouldNameOnlyFilesThatThereAre() {
        assertThat(FILES.values().stream().flatMap(Collection::stream)).isSubsetOf(SiteFiles.NAMES);
    }

    @Test
    void shouldImportOnlyWhatTheOtherExports() {
        for (String file : modules()) {
            for (MatchResult line : found(IMPORTED, file)) {
                String other = beside(file, line.group(2));
                List<String> exported = found(EXPORTED, other).stream()
                        .map(name -> name.group(1))
                        .toList();

                assertThat(importedNames(line))
                        .as("what %s takes from %s", file, other)
                        .isSubsetOf(exported);
            }
        }
    }

    @Test
    void shouldExportOnlyWhatAnotherImports() {
        Set<String> imported = new HashSet<>();
        for (String file : modules()) {
            for (MatchResult line : found(IMPORTED, file)) {
                importedNames(line).forEach(name -> imported.add(beside(file, line.group(2)) + " " + name));
            }
        }

        assertThat(modules().stream().flatMap(PageRoomsTest::exports)).isSubsetOf(imported);
    }

    /** A file that no page comes to is dead, and an import in other words is one that this test would not see. */
    @Test
    void shouldBeReachedFromAPageByTheLinesThatThisTestReads() {
        Set<String> reached = new HashSet<>(Set.of(PICTURE));
        SiteFiles.NAMES.stream().filter(name -> name.endsWith(".html")).forEach(reached::add);
        for (int before = 0; before < reached.size(); ) {
            before = reached.size();
            List.copyOf(reached).forEach(file -> reached.addAll(FILES.get(file)));
        }

        assertThat(reached).containsExactlyInAnyOrderElementsOf(SiteFiles.NAMES);
        assertThat(modules())
                .allSatisfy(file -> assertThat(SiteFiles.text(file)).doesNotContain("import("));
    }

    /** As class names are: whoever looks for a name finds one file. */
    @Test
    void shouldUseNoFileNameTwice() {
        assertThat(SiteFiles.NAMES.stream().map(name -> name.substring(name.indexOf('/') + 1)))
                .doesNotHaveDuplicates();
    }

    private static String room(String file) {
        return file.substring(0, file.indexOf('/'));
    }

    private static List<String> modules() {
        return SiteFiles.NAMES.stream().filter(name -> name.endsWith(".mjs")).toList();
    }

    private static Map<String, Set<String>> filesUsedByFile() {
        return SiteFiles.NAMES.stream().collect(Collectors.toMap(file -> file, PageRoomsTest::filesUsedBy));
    }

    private static Set<String> filesUsedBy(String file) {
        Stream<String> links = found(LINK, file).stream().map(link -> link.group(1));
        Stream<String> imports = found(IMPORT, file).stream().map(line -> beside(file, line.group(1)));
        return Stream.concat(links, imports).collect(Collectors.toSet());
    }

    private static Stream<String> importedNames(MatchResult line) {
        return Stream.of(line.group(1).split(", ")).map(name -> name.replaceAll(" as .*", ""));
    }

    private static Stream<String> exports(String file) {
        return found(EXPORTED, file).stream().map(name -> file + " " + name.group(1));
    }

    private static List<MatchResult> found(Pattern pattern, String file) {
        Matcher matcher = pattern.matcher(SiteFiles.text(file));
        return matcher.results().toList();
    }

    /** The file that is meant by a path as seen from another file. */
    private static String beside(String file, String path) {
        return Path.of("/", file).resolveSibling(path).normalize().toString().substring(1);
    }

    /**
     * Takes away whatever uses nothing that is left, until nothing can be taken: who stays is in a ring or uses one.
     */
    private static Set<String> inOrUnderARing(Map<String, Set<String>> uses) {
        Set<String> left = new HashSet<>(uses.keySet());
        while (left.removeIf(one -> uses.get(one).stream().noneMatch(left::contains))) {
            // Each round takes away the lowest floor that is left.
        }
        return left;
    }
}
