package fermata.decoder.stream.profile;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.stream.OpenLayout;
import fermata.decoder.stream.profile.ProfileReading.Unusable;
import fermata.decoder.stream.profile.ProfileReading.Usable;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StreamProfileTest {
    private static final String OPEN = OpenLayout.profileText();

    /** Each row: what stands in the open layout, what to put there, path, value, part of what was expected. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"version\": 1 | \"version\": 2 | $.version | 2 | 1..1",
                "stream-profile | profile | $.format | \"profile\" | \"stream-profile\"",
                "\"name\": \"Fermata open layout 1\" | \"name\": 7 | $.name | 7 | a name",
                "9e4824b2-a5f5 | 9e4824b2 | $.recognise.service | \"9e4824b2-4d89-9ca7-68bc6d634610\" | 8-4-4-4-12",
                "{ \"service\": | { \"name\": \"a(\", \"service\": | $.recognise.name | \"a(\" | a regular expression",
                "#1f9d55 | green | $.colours.F | \"green\" | #rrggbb",
                "#1f9d55 | #c8252c | $.colours.F | \"#c8252c\" | no other face",
                "#1f9d55 | #C8252C | $.colours.F | \"#C8252C\" | no other face",
                "[\"state\"] | [\"stat\"] | $.read[0].frames[0] | \"stat\" | turns, state, lie, battery",
                "\"byte\": 3, \"bits\": 32 | \"byte\": 30, \"bits\": 32 | $.frames.turns.clock.byte | 30 | 0..19",
                "\"byte\": 1, \"bits\": 16 | \"byte\": 19, \"bits\": 16 | $.frames.turns.sequence | "
                        + "{\"byte\":19,\"bits\":16} | ends at bit 168 of 160",
                "\"tickMicros\": 1000 | \"tickMicros\": 0 | $.frames.turns.clock.tickMicros | 0 | above 0",
                "\"value\": 212 | \"value\": 256 | $.frames.turns.constants[0].value | 256 | 0..255",
                "\"entries\": 5 | \"entries\": 6 | $.frames.turns.history | {\"stride\":16 | bit 168 of 160",
                "\"newest-first\" | \"upside-down\" | $.frames.turns.history.order | \"upside-down\" | newest-last",
                "\"17\": \"B'\" | \"17\": \"Rw\" | $.frames.turns.turns.17 | \"Rw\" | a face turn",
                "\"17\": \"B'\" | \"32\": \"B'\" | $.frames.turns.turns.32 | \"B'\" | 0..31",
                "\"17\": \"B'\" | \"17\": \"B2\" | $.frames.turns.turns | {\"0\":\"U\" | a code for B'",
                "\"crc8\" | \"crc9\" | $.frames.turns.checksums[0].kind | \"crc9\" | \"crc16\"",
                "\"polynomial\": 7, | | $.frames.turns.checksums[0].polynomial | nothing | without its leading one",
                "\"URF\" | \"UFR\" | $.frames.state.cubies.corners[0] | \"UFR\" | clockwise",
                "\"saturates\": true | \"saturated\": true | $.frames.turns.history.before.saturated | true | "
                        + "no such member",
                "\"percent\": { \"byte\": 0 } | \"percent\": 0 | $.frames.battery.percent | 0 | an object",
                "\"kind\": \"orientation\" | \"kind\": \"tilt\" | $.frames.lie.kind | \"tilt\" | \"orientation\"",
                "\"one\": 16384 | \"one\": 40000 | $.frames.lie.quaternion.one | 40000 | 1..32768",
                "\"one\": 16384 | \"won\": 16384 | $.frames.lie.quaternion.won | 16384 | no such member",
                "16, \"signed\": true }, | 16 }, | $.frames.lie.quaternion.w | {\"byte\":5 | a signed field",
                "\"byte\": 11, | \"byte\": 13, | $.frames.lie.quaternion.z | {\"byte\":13 | bit 120 of 112",
                "\"sensor-to-world\" | \"somewhere\" | $.frames.lie.takes | \"somewhere\" | \"world-to-sensor\"",
                "\"x\": \"R\", \"y\": \"B\" | \"x\": \"R\", \"y\": \"L\" | $.frames.lie.axes | {\"x\":\"R\" | "
                        + "right angles",
                "\"x\": \"R\", \"y\": \"B\" | \"x\": \"R\", \"y\": \"F\" | $.frames.lie.axes | {\"x\":\"R\" | "
                        + "z out of D",
                "\"x\": \"R\", \"y\": \"B\" | \"x\": \"Q\", \"y\": \"B\" | $.frames.lie.axes.x | \"Q\" | U R F D L B",
                "\"up\": \"z\" | \"up\": \"w\" | $.frames.lie.up | \"w\" | \"-z\"",
                "\"byte\": 1, \"bits\": 32, | \"byte\": 1, \"bits\": 24, | $.frames.lie.clock | {\"byte\":1 | "
                        + "32 bits and tickMicros 1000.0",
                "\"version\": 1, | | $.version | nothing | 1"
            })
    void shouldNamePathValueAndExpectationWhenOneThingIsWrong(
            String there, String instead, String path, String value, String expected) {
        assertThat(OPEN).contains(there);
        String json = replaceFirst(OPEN, there, instead == null ? "" : instead);

        assertThat(problems(json)).anySatisfy(problem -> {
            assertThat(problem.path()).isEqualTo(path);
            assertThat(problem.value()).startsWith(value);
            assertThat(problem.expected()).contains(expected);
        });
    }

    @Test
    void shouldFindEveryProblemAtOnceWhenManyThingsAreWrong() {
        String json = OPEN.replace("#1f9d55", "green")
                .replace("\"tickMicros\": 1000", "\"tickMicros\": -1")
                .replace("\"fresh\"", "\"frsh\"")
                .replace("\"percent\": { \"byte\": 0 }", "\"percent\": { \"byte\": 1 }");

        assertThat(problems(json))
                .extracting(ProfileProblem::path)
                .containsExactly(
                        "$.colours.F",
                        "$.frames.turns.clock.tickMicros",
                        "$.frames.turns.frsh",
                        "$.frames.state.clock.tickMicros",
                        "$.frames.lie.clock.tickMicros",
                        "$.frames.battery.percent.byte");
    }

    @Test
    void shouldSayWhereWhenTheTextIsNoJson() {
        assertThat(problems("{\n  \"format\": oops\n}")).singleElement().satisfies(problem -> {
            assertThat(problem.path()).isEqualTo("$");
            assertThat(problem.value()).contains("line 2").contains("oops");
        });
        assertThat(problems("[]"))
                .singleElement()
                .satisfies(p -> assertThat(p.expected()).contains("object"));
        assertThat(problems("")).hasSize(1);
        assertThat(problems(OPEN + "{}"))
                .singleElement()
                .satisfies(p -> assertThat(p.value()).endsWith("something follows the object"));
        assertThat(problems(OPEN.replaceFirst("\"version\": 1,", "\"version\": 1, \"version\": 1,")))
                .hasSize(1);
    }

    @Test
    void shouldRefuseFramesThatDisagreeOnTheClockOrThatNobodyUses() {
        String other = replaceFirst(OPEN, "\"tickMicros\": 1000", "\"tickMicros\": 500");
        String unused = OPEN.replace(
                "{ \"characteristic\": \"acacdcfd-2a24-4e64-b0e7-16471a29d738\", \"frames\": " + "[\"state\"] },", "");

        assertThat(problems(other))
                .extracting(ProfileProblem::path)
                .containsExactly("$.frames.state.clock", "$.frames.lie.clock");
        assertThat(problems(unused)).extracting(ProfileProblem::path).containsExactly("$.frames.state");
    }

    @Test
    void shouldRefuseTurnsWithAndWithoutAClockInOneProfile() {
        String table = OPEN.substring(OPEN.indexOf("\"turns\": {\n        \"0\""), OPEN.indexOf("\"checksums\""));
        String bare = "\"bare\": {\"kind\": \"turns\", \"bytes\": 1, \"code\": {\"byte\": 0, \"bits\": 5}, "
                + table.substring(0, table.lastIndexOf(',')) + "},";
        String json = OPEN.replace("\"frames\": [\"turns\"]", "\"frames\": [\"turns\", \"bare\"]")
                .replace("    \"battery\": {", bare + "    \"battery\": {");

        assertThat(problems(json)).singleElement().satisfies(problem -> {
            assertThat(problem.path()).isEqualTo("$.frames.bare");
            assertThat(problem.expected()).contains("if, and only if, frame turns has them");
        });
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void shouldNeverThrowWhenTheTextIsDamaged(long seed) {
        Random random = new Random(seed);
        String[] inserts = {"", "{}", "[]", "null", "-1", "1e99", "\"x\"", "true", "9999999999999999999", "\"\\u0000\""
        };
        for (int round = 0; round < 1000; round++) {
            int from = random.nextInt(OPEN.length());
            int to = Math.min(OPEN.length(), from + random.nextInt(12));
            String json = OPEN.substring(0, from) + inserts[random.nextInt(inserts.length)] + OPEN.substring(to);

            ProfileReading reading = StreamProfile.parse(json);

            assertThat(reading).as("seed " + seed + ": " + json).isNotNull();
        }
    }

    @Test
    void shouldNeverThrowWhenAnyValueIsReplacedByAnother() {
        String[] others = {"{}", "[]", "null", "-1", "0", "4096", "1e99", "\"\"", "true", "[0]", "{\"byte\":0}"};
        Matcher values =
                Pattern.compile("(?<=: )(\"[^\"]*\"|\\d+|true|\\[[^\\]]*\\])").matcher(OPEN);
        int replaced = 0;
        while (values.find()) {
            for (String other : others) {
                String json = OPEN.substring(0, values.start()) + other + OPEN.substring(values.end());
                assertThat(StreamProfile.parse(json)).as(json).isNotNull();
                replaced++;
            }
        }
        assertThat(replaced).isGreaterThan(800);
    }

    @Test
    void shouldRecogniseByServiceAndNameTogether() {
        StreamProfile profile = usable(OPEN.replace("{ \"service\":", "{ \"name\": \"Galley \\\\d+\", \"service\":"));

        assertThat(profile.recognition().fits("Galley 7", List.of(OpenLayout.SERVICE)))
                .isTrue();
        assertThat(profile.recognition().fits("My Galley 7", List.of(OpenLayout.SERVICE)))
                .isFalse();
        assertThat(profile.recognition().fits("Galley 7", List.of(new UUID(1, 2))))
                .isFalse();
    }

    @Test
    void shouldReadWritesAndKeepAlive() {
        StreamProfile profile = usable(OPEN.replace(
                "\"frames\": {\n    \"turns\"",
                "\"onConnect\": [{\"characteristic\": "
                        + "\"1234\", \"hex\": \"01 fF\", \"response\": false}], "
                        + "\"keepAlive\": [{\"characteristic\": \"1234\", "
                        + "\"hex\": \"00\", \"everyMillis\": 30000}],\n  \"frames\": {\n    \"turns\""));

        assertThat(profile.onConnect()).singleElement().satisfies(write -> {
            assertThat(write.characteristic()).hasToString("00001234-0000-1000-8000-00805f9b34fb");
            assertThat(write.bytes()).containsExactly(1, 255);
            assertThat(write.withResponse()).isFalse();
        });
        assertThat(profile.keepAlive())
                .singleElement()
                .satisfies(k -> assertThat(k.periodMillis()).isEqualTo(30_000));
        assertThat(profile.describe()).extracting(ProfileTrait::label).contains("write on connect", "keep alive");
    }

    @Test
    void shouldDescribeTheOpenLayout() {
        assertThat(usable(OPEN).describe())
                .extracting(t -> t.label() + ": " + t.text())
                .contains(
                        "loss: seen and counted, modulo 65536",
                        "repair: from the last 5 turns, with times",
                        "time: device clock, tick 1000.0 us, wraps after 4294967 s",
                        "orientation: quaternions, whole numbers of 16 bits, 16384 stands for 1, timed by the device"
                                + " clock; which way is north is not asked",
                        "subscribe: b3cb4267-3d05-43d3-a261-fbfdfbcd347f: turns 20 bytes");
    }

    private static String replaceFirst(String text, String there, String instead) {
        int at = text.indexOf(there);
        return text.substring(0, at) + instead + text.substring(at + there.length());
    }

    private static StreamProfile usable(String json) {
        assertThat(StreamProfile.parse(json)).isInstanceOf(Usable.class);
        return ((Usable) StreamProfile.parse(json)).profile();
    }

    private static List<ProfileProblem> problems(String json) {
        assertThat(StreamProfile.parse(json)).isInstanceOf(Unusable.class);
        return ((Unusable) StreamProfile.parse(json)).problems();
    }
}
