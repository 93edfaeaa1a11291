package fermata.analysis.hold.lattice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HoldWeightsTest {
    @Test
    void shouldPrintWhatItReadWhenTheTextIsItsOwn() {
        double[][] some = new double[HoldWeights.Circle.values().length][Template.SIZE];
        for (int feature = 0; feature < Template.SIZE; feature += 7) {
            some[feature % some.length][feature] = (feature % 400 - 200) / 100.0;
        }
        String text = new HoldWeights(some, 0.75).print();

        assertThat(HoldWeights.parse(text).print()).isEqualTo(text);
        assertThat(text.lines().count()).isGreaterThan(Template.SIZE / 8);
    }

    @ParameterizedTest
    @CsvSource({
        "all turn R' cross abc,line 2",
        "some turn R' cross 1,line 2",
        "all turn Q cross 1,Q",
        "all turn R' 1,turn takes 2 words",
        "all leap R' 1,leap",
        "trust 1.5,line 2 of the weights: a trust of 1.5",
        "trust much,line 2",
    })
    void shouldNameLineAndWordWhenALineIsWrong(String line, String named) {
        assertThatThrownBy(() -> HoldWeights.parse("hold-weights 1\n" + line + '\n'))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(named);
    }
}
