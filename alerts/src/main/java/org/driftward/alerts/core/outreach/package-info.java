/**
 * Carrying an alarm beyond the board: who is to be told, by what, in which words, how often it is
 * tried, and when it counts as failed. Pure: sending is done elsewhere.
 */
@NullMarked
package org.driftward.alerts.core.outreach;

import org.jspecify.annotations.NullMarked;
