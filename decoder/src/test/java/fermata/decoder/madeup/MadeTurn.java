package fermata.decoder.madeup;

import fermata.decoder.cube.Turn;

/** A turn as the device feels it, and when, in microseconds of a perfect clock. */
record MadeTurn(Turn turn, long micros) {}
