/**
 * The few statistical procedures that the findings stand on and no library on the class path offers.
 *
 * <p>Main types: {@link fermata.analysis.statistics.LogNormal} for times, {@link fermata.analysis.statistics.TheilSen}
 * for trends, {@link fermata.analysis.statistics.NestedBootstrap} for intervals over nights and solves. Plain numbers
 * in and out; chance comes in as a generator. Each type names its source; the tests compare with R 4.2.2.
 */
package fermata.analysis.statistics;
