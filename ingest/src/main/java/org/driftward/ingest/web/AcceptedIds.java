package org.driftward.ingest.web;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** The answer to what was kept. */
@Schema(description = "What Kafka has acknowledged; no crash loses it")
public record AcceptedIds(List<String> accepted) {}
