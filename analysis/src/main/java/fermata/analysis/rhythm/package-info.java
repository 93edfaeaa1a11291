/**
 * What is learned of a solver's times, and how likely a beat of this length holds a rest.
 *
 * <p>Main types: {@link fermata.analysis.rhythm.RestFit} learns a {@link fermata.analysis.rhythm.RestSnapshot} from a
 * night; one snapshot is frozen a night and has an id. Logarithms of microseconds. The interval model follows Roeser,
 * De Maeyer, Leijten, Van Waes (2021), doi 10.1007/s11145-021-10203-z.
 */
package fermata.analysis.rhythm;
