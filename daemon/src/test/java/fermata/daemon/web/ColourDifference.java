package fermata.daemon.web;

/** CIEDE2000. Source: Sharma, Wu, Dalal, "The CIEDE2000 color-difference formula", 2005, equations 2 to 22. */
final class ColourDifference {
    private static final double POWER_25 = Math.pow(25, 7);

    private ColourDifference() {}

    static double ciede2000(double[] one, double[] other) {
        double chromaMean = (Math.hypot(one[1], one[2]) + Math.hypot(other[1], other[2])) / 2;
        double stretch = 1 + 0.5 * (1 - compress(chromaMean));
        double[] first = polar(one, stretch);
        double[] second = polar(other, stretch);
        double lightness = (first[0] + second[0]) / 2;
        double chroma = (first[1] + second[1]) / 2;
        boolean isGrey = first[1] * second[1] == 0;
        double turn = isGrey ? 0 : hueStep(first[2], second[2]);
        double hue = isGrey ? first[2] + second[2] : hueMean(first[2], second[2]);

        double lightnessStep = second[0] - first[0];
        double chromaStep = second[1] - first[1];
        double hueDistance = 2 * Math.sqrt(first[1] * second[1]) * Math.sin(Math.toRadians(turn / 2));
        double offset = Math.pow(lightness - 50, 2);
        double lightnessTerm = lightnessStep / (1 + 0.015 * offset / Math.sqrt(20 + offset));
        double chromaTerm = chromaStep / (1 + 0.045 * chroma);
        double hueTerm = hueDistance / (1 + 0.015 * chroma * hueWeight(hue));
        double rotation =
                -2 * compress(chroma) * Math.sin(Math.toRadians(60 * Math.exp(-Math.pow((hue - 275) / 25, 2))));
        return Math.sqrt(lightnessTerm * lightnessTerm
                + chromaTerm * chromaTerm
                + hueTerm * hueTerm
                + rotation * chromaTerm * hueTerm);
    }

    private static double compress(double chroma) {
        double power = Math.pow(chroma, 7);
        return Math.sqrt(power / (power + POWER_25));
    }

    private static double[] polar(double[] lab, double stretch) {
        double a = lab[1] * stretch;
        double hue = Math.toDegrees(Math.atan2(lab[2], a));
        return new double[] {lab[0], Math.hypot(a, lab[2]), hue < 0 ? hue + 360 : hue};
    }

    private static double hueStep(double from, double to) {
        double step = to - from;
        return step > 180 ? step - 360 : step < -180 ? step + 360 : step;
    }

    private static double hueMean(double one, double other) {
        double sum = one + other;
        if (Math.abs(one - other) <= 180) {
            return sum / 2;
        }
        return sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
    }

    private static double hueWeight(double hue) {
        return 1
                - 0.17 * Math.cos(Math.toRadians(hue - 30))
                + 0.24 * Math.cos(Math.toRadians(2 * hue))
                + 0.32 * Math.cos(Math.toRadians(3 * hue + 6))
                - 0.20 * Math.cos(Math.toRadians(4 * hue - 63));
    }
}
