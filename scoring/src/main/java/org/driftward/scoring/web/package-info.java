/** The calls of scoring: re-scoring the log under another edition. */
@NullMarked
package org.driftward.scoring.web;

import org.jspecify.annotations.NullMarked;
