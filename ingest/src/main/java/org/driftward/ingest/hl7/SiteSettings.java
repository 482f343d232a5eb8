package org.driftward.ingest.hl7;

import java.time.Duration;
import java.time.ZoneId;
import java.util.Optional;

/**
 * What a site settles for its HL7 v2 feeds.
 *
 * @param zone of times without an offset; empty refuses them
 * @param processing the one MSH-11 that is taken: P for production, so that nobody's exercise comes
 *     to a real board
 * @param patientAuthority the assigning authority (CX.4) whose patient number counts; empty takes
 *     the first number
 * @param clockSkew how far a sender's clock may run ahead
 */
record SiteSettings(
    Optional<ZoneId> zone,
    String processing,
    Optional<String> patientAuthority,
    Duration clockSkew) {}
