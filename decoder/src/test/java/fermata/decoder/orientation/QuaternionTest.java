package fermata.decoder.orientation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class QuaternionTest {
    private static final Quaternion I = new Quaternion(0, 1, 0, 0);
    private static final Quaternion J = new Quaternion(0, 0, 1, 0);
    private static final Quaternion K = new Quaternion(0, 0, 0, 1);

    /** ij = k, jk = i, ki = j, ijk = -1: Hamilton 1843. */
    @Test
    void shouldMultiplyAsHamiltonDid() {
        assertThat(I.after(J)).isEqualTo(K);
        assertThat(J.after(K)).isEqualTo(I);
        assertThat(K.after(I)).isEqualTo(J);
        assertThat(I.after(J).after(K).w()).isEqualTo(-1);
    }

    @Test
    void shouldTakeTheAxesWhereItWasToldTo() {
        SplittableRandom random = new SplittableRandom(1);
        for (int round = 0; round < 500; round++) {
            Quaternion any = random(random);

            Quaternion again = Quaternion.takingAxesTo(image(any, 1, 0, 0), image(any, 0, 1, 0), image(any, 0, 0, 1));

            assertThat(again.angleTo(any)).as("round " + round).isCloseTo(0, within(1e-7));
        }
    }

    /** v' = q v q*, with v as a quaternion without a real part. */
    private static double[] image(Quaternion q, double x, double y, double z) {
        Quaternion turned = q.after(new Quaternion(0, x, y, z)).after(q.inverse());
        return new double[] {turned.x(), turned.y(), turned.z()};
    }

    @Test
    void shouldGoAShareOfTheWayAtOneSpeed() {
        SplittableRandom random = new SplittableRandom(2);
        for (int round = 0; round < 200; round++) {
            Quaternion from = random(random);
            Quaternion to = random(random);
            double share = random.nextDouble();

            Quaternion between = from.towards(to, share);

            assertThat(between.angleTo(from)).isCloseTo(share * from.angleTo(to), within(1e-6));
            assertThat(between.angleTo(to)).isCloseTo((1 - share) * from.angleTo(to), within(1e-6));
        }
    }

    @Test
    void shouldFindTheYawUnderATilt() {
        Quaternion tilted = Quaternion.about(0, 1, 0, 0.7).after(Quaternion.about(1, 0, 0.5, 0.4));

        assertThat(tilted.yaw()).isCloseTo(0.7, within(1e-9));
    }

    @Test
    void shouldRefuseWhatIsNoRotation() {
        assertThatThrownBy(() -> new Quaternion(1, 1, 0, 0)).hasMessageContaining("squared norm 2.0");
        assertThatThrownBy(() -> Quaternion.scaled(0, 0, 0, 0)).hasMessageContaining("not 1");
    }

    private static Quaternion random(SplittableRandom random) {
        return Quaternion.scaled(
                random.nextGaussian(), random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
    }
}
