package fermata.daemon.web;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.json.CasesView;
import fermata.daemon.json.Json;
import fermata.daemon.json.NightView;
import fermata.daemon.json.Over;
import java.time.LocalDate;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;

/** What page tests make up has the members that the board really tells, each of them and no other. */
class RehearsedShapesTest {
    private static final LocalDate DAY = LocalDate.of(2026, 11, 24);

    @ParameterizedTest
    @EnumSource(Over.class)
    void shouldTellNightsAsTheBoardDoes(Over over) {
        String plain = RehearsedPractice.threeNights().nightJson(DAY, over).orElseThrow();
        String fuller =
                RehearsedPractice.threeNights().fuller().nightJson(DAY, over).orElseThrow();

        assertSameMembers(Json.read(plain), Json.tree(Json.read(plain, NightView.class)));
        assertSameMembers(Json.read(fuller), Json.tree(Json.read(fuller, NightView.class)));
    }

    static Stream<Map<String, Object>> cases() {
        return Stream.of(MetCases.none(), MetCases.ofOneSolve(), MetCases.ofManySolves(), MetCases.ofManyNights());
    }

    @ParameterizedTest
    @MethodSource("cases")
    void shouldTellCasesAsTheBoardDoes(Map<String, Object> made) {
        String cases = Json.write(made);

        assertSameMembers(Json.read(cases), Json.tree(Json.read(cases, CasesView.class)));
    }

    @Test
    void shouldNoticeAMemberThatIsMissing() {
        JsonNode whole = Json.read("{\"a\": [{\"b\": 1, \"c\": null}]}");

        assertThat(members("", whole)).containsExactlyInAnyOrder(".a", ".a.b", ".a.c");
    }

    private static void assertSameMembers(JsonNode made, JsonNode told) {
        assertThat(members("", told)).isEqualTo(members("", made));
    }

    /** The paths of all members, those of all items of a list together. */
    private static Set<String> members(String path, JsonNode node) {
        Set<String> paths = new TreeSet<>();
        node.forEachEntry((name, member) -> {
            paths.add(path + "." + name);
            paths.addAll(members(path + "." + name, member));
        });
        if (node.isArray()) {
            node.forEach(item -> paths.addAll(members(path, item)));
        }
        return paths;
    }
}
