package fermata.daemon.web;

/**
 * What eyes make of linear-light colours. Source: Machado, Oliveira, Fernandes, "A physiologically-based model for
 * simulation of color vision deficiency", 2009, matrices of severity 1.
 */
enum ColourVision {
    NORMAL(new double[][] {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}),
    PROTAN(new double[][] {
        {0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}
    }),
    DEUTAN(new double[][] {
        {0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}
    }),
    TRITAN(new double[][] {
        {1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}
    });

    private final double[][] matrix;

    ColourVision(double[][] matrix) {
        this.matrix = matrix;
    }

    double[] see(double[] rgb) {
        double[] seen = new double[3];
        for (int row = 0; row < 3; row++) {
            double value = matrix[row][0] * rgb[0] + matrix[row][1] * rgb[1] + matrix[row][2] * rgb[2];
            seen[row] = Math.max(0, Math.min(1, value));
        }
        return seen;
    }
}
