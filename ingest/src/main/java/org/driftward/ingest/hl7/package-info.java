/**
 * HL7 v2 in: ORU^R01 becomes assessments, ADT becomes bed moves, and every message gets its
 * acknowledgement. HL7 v2 and its library stay in this package. Read {@link
 * org.driftward.ingest.hl7.Hl7Door} first.
 */
@NullMarked
package org.driftward.ingest.hl7;

import org.jspecify.annotations.NullMarked;
