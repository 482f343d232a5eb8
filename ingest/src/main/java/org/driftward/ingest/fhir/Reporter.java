package org.driftward.ingest.fhir;

/**
 * Who sends a resource.
 *
 * @param account signs what names no performer
 * @param feed under which its codes are known, see {@link
 *     org.driftward.ingest.contract.Received#origin()}
 */
record Reporter(String account, String feed) {}
