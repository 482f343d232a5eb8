/**
 * What the rest of the house may know about scoring: the snapshot of an encounter and everything it
 * explains, and the care plan that scoring obeys. Plain records.
 */
@NullMarked
package org.driftward.scoring.contract;

import org.jspecify.annotations.NullMarked;
