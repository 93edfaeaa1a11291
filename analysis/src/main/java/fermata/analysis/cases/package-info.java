/**
 * Which case a state shows: the classes of pairs and of last layers, with their names and pictures.
 *
 * <p>Main types: {@link fermata.analysis.cases.LastLayerCases}, {@link fermata.analysis.cases.PairCases}, {@link
 * fermata.analysis.cases.CasePictures}. Take a state held with its first layer at D. The classes are computed (orbits
 * and double cosets); their numbers and letters are common usage.
 */
package fermata.analysis.cases;
