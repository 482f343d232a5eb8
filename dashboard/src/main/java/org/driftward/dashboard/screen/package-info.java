/**
 * What stands on the pages, in words: pure functions from views to screens. A template only places
 * what a screen holds; every choice of a word, a unit or an order is made, and tested, here.
 *
 * <p>Knows no framework, no request and no clock but the time it is given.
 */
@NullMarked
package org.driftward.dashboard.screen;

import org.jspecify.annotations.NullMarked;
