/** Room of the fermata daemon; see the packages below it. */
package fermata.daemon;
