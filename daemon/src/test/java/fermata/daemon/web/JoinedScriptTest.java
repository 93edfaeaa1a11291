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
                "a.mjs", "import { b } from \"./b.mjs\";\nimport { c as see } from \"./c-d.mjs\";\nb(see);\n",
                "b.mjs", "import { c } from \"./c-d.mjs\";\nexport function b(x) {\n  return x + c;\n}\n",
                "c-d.mjs", "export const c = 1;\n");

        assertThat(JoinedScript.of("a.mjs", files::get)).isEqualTo("""
                        const $c_d = (() => {
                        const c = 1;
                        return { c };
                        })();
                        const $b = (() => {
                        const { c } = $c_d;
                        function b(x) {
                          return x + c;
                        }
                        return { b };
                        })();
                        const $a = (() => {
                        const { b } = $b;
                        const { c: see } = $c_d;
                        b(see);
                        return {  };
                        })();""");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "export default 1;",
                "export { a };",
                "export let a = 1;",
                "import a from \"./b.mjs\";",
                "import {",
                "import { a } from \"https://elsewhere/b.mjs\";"
            })
    void shouldNameTheLineThatItCannotJoin(String line) {
        assertThatThrownBy(() -> JoinedScript.of("a.mjs", name -> "const x = 1;\n" + line + "\n"))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("a.mjs, line 2")
                .hasMessageContaining(line);
    }

    @Test
    void shouldRefuseModulesThatImportEachOther() {
        Map<String, String> files =
                Map.of("a.mjs", "import { b } from \"./b.mjs\";", "b.mjs", "import { a } from \"./a.mjs\";");

        assertThatThrownBy(() -> JoinedScript.of("a.mjs", files::get))
                .hasMessageContaining("a.mjs imports itself over a.mjs, b.mjs");
    }
}
