/**
 * The Minimal Lower Layer Protocol of HL7: frames over TCP, every one bounded in size, number and
 * time. Knows nothing of what is in a message. Read {@link
 * org.driftward.ingest.hl7.mllp.MllpListener} first.
 */
@NullMarked
package org.driftward.ingest.hl7.mllp;

import org.jspecify.annotations.NullMarked;
