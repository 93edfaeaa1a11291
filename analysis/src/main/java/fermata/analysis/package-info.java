/** Room of the fermata analysis; see the packages below it. */
package fermata.analysis;
