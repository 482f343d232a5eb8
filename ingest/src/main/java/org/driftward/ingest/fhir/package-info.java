/**
 * HL7 FHIR R4 in: Observations and Bundles become assessments and bed moves. FHIR stays in this
 * package. Read {@link org.driftward.ingest.fhir.ObservationReader} first.
 */
@NullMarked
package org.driftward.ingest.fhir;

import org.jspecify.annotations.NullMarked;
