package fermata.daemon.web;

/** Colours as linear-light red, green, blue from 0 to 1. Source: IEC 61966-2-1 (sRGB), WCAG 2.2 (contrast). */
final class Colour {
    private static final double[] WHITE_D65 = {0.95047, 1.0, 1.08883};

    private Colour() {}

    static double[] linear(String hex) {
        double[] channels = new double[3];
        for (int channel = 0; channel < 3; channel++) {
            double value = Integer.parseInt(hex.substring(1 + 2 * channel, 3 + 2 * channel), 16) / 255.0;
            channels[channel] = value <= 0.04045 ? value / 12.92 : Math.pow((value + 0.055) / 1.055, 2.4);
        }
        return channels;
    }

    static double contrast(double[] one, double[] other) {
        double bright = Math.max(luminance(one), luminance(other));
        double dark = Math.min(luminance(one), luminance(other));
        return (bright + 0.05) / (dark + 0.05);
    }

    private static double luminance(double[] rgb) {
        return 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2];
    }

    /** CIE L*a*b* under D65. */
    static double[] lab(double[] rgb) {
        double x = curve((0.4124564 * rgb[0] + 0.3575761 * rgb[1] + 0.1804375 * rgb[2]) / WHITE_D65[0]);
        double y = curve((0.2126729 * rgb[0] + 0.7151522 * rgb[1] + 0.0721750 * rgb[2]) / WHITE_D65[1]);
        double z = curve((0.0193339 * rgb[0] + 0.1191920 * rgb[1] + 0.9503041 * rgb[2]) / WHITE_D65[2]);
        return new double[] {116 * y - 16, 500 * (x - y), 200 * (y - z)};
    }

    private static double curve(double ratio) {
        return ratio > 216.0 / 24389 ? Math.cbrt(ratio) : (24389.0 / 27 * ratio + 16) / 116;
    }
}
