/**
 * HL7 FHIR R4 out: accepted findings and scores as Observations, and the statement of what this
 * server can do. FHIR stays in this package. Read {@link org.driftward.dashboard.fhir.Publication}
 * first.
 */
@NullMarked
package org.driftward.dashboard.fhir;

import org.jspecify.annotations.NullMarked;
