package fermata.decoder.cube;

/** How states come about: the six quarter turns from geometry, and checked cubie numbers. */
final class CubeStates {
    private CubeStates() {}

    /** The 18 states one turn from solved, by {@link Turn#index()}. */
    static CubeState[] ofTurns() {
        CubeState[] states = new CubeState[18];
        String solved = CubeState.SOLVED.facelets();
        for (Face face : Face.values()) {
            CubeState quarter = readTurned(solved, Sticker.sourcesOfQuarterTurn(face));
            CubeState half = quarter.then(quarter);
            states[Turn.of(face, 1).index()] = quarter;
            states[Turn.of(face, 2).index()] = half;
            states[Turn.of(face, 3).index()] = half.then(quarter);
        }
        return states;
    }

    private static CubeState readTurned(String solved, int[] sources) {
        StringBuilder letters = new StringBuilder();
        for (int source : sources) {
            letters.append(solved.charAt(source));
        }
        return Facelets.read(letters.toString());
    }

    static byte[] permutation(String what, int[] values, int size) {
        byte[] checked = inRange(what, values, size, size);
        boolean[] seen = new boolean[size];
        for (int place = 0; place < size; place++) {
            if (seen[checked[place]]) {
                throw new IllegalArgumentException(
                        what + " " + checked[place] + " at place " + place + " stands in another place as well");
            }
            seen[checked[place]] = true;
        }
        return checked;
    }

    static byte[] inRange(String what, int[] values, int size, int bound) {
        if (values.length != size) {
            throw new IllegalArgumentException(values.length + " values of " + what + " where " + size + " belong");
        }
        byte[] checked = new byte[size];
        for (int place = 0; place < size; place++) {
            if (values[place] < 0 || values[place] >= bound) {
                throw new IllegalArgumentException(
                        what + " " + values[place] + " at place " + place + " is not in 0.." + (bound - 1));
            }
            checked[place] = (byte) values[place];
        }
        return checked;
    }
}
