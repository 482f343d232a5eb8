/** The HTTP calls about episodes, care plans and the journal. Edges only: check, call, answer. */
@NullMarked
package org.driftward.alerts.web;

import org.jspecify.annotations.NullMarked;
