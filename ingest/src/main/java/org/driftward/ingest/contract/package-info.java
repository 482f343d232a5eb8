/**
 * What the rest of the house may know about intake: the words of an assessment, who is in which
 * bed, the catalogue of findings, the topics, and how a record is written as JSON.
 *
 * <p>Plain records and interfaces. Nothing here may mention Quarkus, Kafka, Jackson, FHIR or HL7 in
 * a public signature.
 */
@NullMarked
package org.driftward.ingest.contract;

import org.jspecify.annotations.NullMarked;
