package fermata.daemon.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class VisibleTest {
    /** ECMA-48: ESC, the one-byte CSI and BEL; UAX 9: the directions; the Unicode Standard, 23: the invisible ones. */
    @ParameterizedTest
    @CsvSource({
        "1B", "9B", "07", "0A", "0D", "00", "7F", "85", "AD", "61C", "200B", "200D", "200E", "200F", "2028", "2029",
        "202A", "202B", "202C", "202D", "202E", "2066", "2067", "2068", "2069", "FEFF", "E000", "D800", "E0001", "E0041"
    })
    void shouldShowTheNumberOfWhatIsObeyedOrUnseen(String hex) {
        String text = "a" + Character.toString(Integer.parseInt(hex, 16)) + "b";
        assertThat(Visible.line(text)).isEqualTo("a<" + hex + ">b");
    }

    @Test
    void shouldLeaveLettersOfAllLanguagesAsTheyAre() {
        String names = "Kari på fergå, Бублик, 立方体, كعب, 🧊 R' U2 <b>&amp;</b>";
        assertThat(Visible.line(names)).isEqualTo(names);
        assertThat(Visible.lines(names + "\n\tnext")).isEqualTo(names + "\n\tnext");
    }

    @Test
    void shouldShowACharacterWholeWhenItsHalvesArePrintedApart() {
        StringWriter terminal = new StringWriter();
        PrintWriter out = VisibleWriter.before(new PrintWriter(terminal));
        out.write("🧊".charAt(0));
        out.write("🧊".charAt(1));
        out.println("\u001b]0;gone\u0007");
        assertThat(terminal.toString()).isEqualTo("🧊<1B>]0;gone<07>" + System.lineSeparator());
    }

    @Test
    void shouldSayThatNothingCanBePrintedWhenTheTerminalIsGone() {
        Writer gone = new Writer() {
            @Override
            public void write(char[] buffer, int from, int length) throws java.io.IOException {
                throw new java.io.IOException("broken pipe");
            }

            @Override
            public void flush() {}

            @Override
            public void close() {}
        };
        PrintWriter out = VisibleWriter.before(new PrintWriter(gone));
        out.println("a line");
        assertThat(out.checkError()).isTrue();
    }
}
