package fermata.daemon.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class JoinedScriptTest {
    @Test
    void shouldPutEveryModuleOnceBeforeWhatImportsIt() {
        Map<String, String> files = Map.of(
                "up/a.mjs", "import { b } from \"./b.mjs\";\nimport { c as see } from \"../down/c-d.mjs\";\nb(see);\n",
                "up/b.mjs", "import { c } from \"../down/c-d.mjs\";\nexport function b(x) {\n  return x + c;\n}\n",
                "down/c-d.mjs", "export const c = 1;\n");

        assertThat(JoinedScript.of("up/a.mjs", files::get)).isEqualTo("""
                        const $down$c_d = (() => {
                        const c = 1;
                        return { c };
                        })();
                        const $up$b = (() => {
                        const { c } = $down$c_d;
                        function b(x) {
                          return x + c;
                        }
                        return { b };
                        })();
                        const $up$a = (() => {
                        const { b } = $up$b;
                        const { c: see } = $down$c_d;
                        b(see);
                        return {  };
                        })();""");
    }

    @Test
    void shouldKeepFilesOfOneNameInTwoRoomsApart() {
        Map<String, String> files = Map.of(
                "up/a.mjs", "import { a } from \"../down/a.mjs\";",
                "down/a.mjs", "export const a = 1;");

        assertThat(JoinedScript.of("up/a.mjs", files::get))
                .contains("const $down$a = ", "const $up$a = ", "const { a } = $down$a;");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "export default 1;",
                "export { a };",
                "export let a = 1;",
                "import a from \"./b.mjs\";",
                "import {",
                "import { a } from \"https://elsewhere/b.mjs\";",
                "import { a } from \"../b.mjs\";",
                "import { a } from \"../../down/b.mjs\";",
                "import { a } from \"../../../etc/b.mjs\";",
                "import { a } from \"../down/../b.mjs\";",
                "import { a } from \"./down/b.mjs\";",
                "import { a } from \"/down/b.mjs\";"
            })
    void shouldNameTheLineThatItCannotJoin(String line) {
        assertThatThrownBy(() -> JoinedScript.of("up/a.mjs", name -> "const x = 1;\n" + line + "\n"))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("up/a.mjs, line 2")
                .hasMessageContaining(line);
    }

    @Test
    void shouldRefuseModulesThatImportEachOther() {
        Map<String, String> files =
                Map.of("up/a.mjs", "import { b } from \"./b.mjs\";", "up/b.mjs", "import { a } from \"./a.mjs\";");

        assertThatThrownBy(() -> JoinedScript.of("up/a.mjs", files::get))
                .hasMessageContaining("up/a.mjs imports itself over up/a.mjs, up/b.mjs");
    }
}
