package org.driftward.ingest.store;

import java.time.Instant;
import org.driftward.ingest.contract.WardScope;
import org.jspecify.annotations.Nullable;

/**
 * What is known of a file before its first byte.
 *
 * @param id of the import
 * @param key by which the same sender finds the same file again after a break
 * @param mapping the name of how its header is read, or null for our own header
 * @param mappingText what that name means today; null with {@code mapping}
 */
public record Upload(
    String id,
    String key,
    String name,
    String contentType,
    @Nullable String mapping,
    @Nullable String mappingText,
    String by,
    WardScope wards,
    Instant createdAt,
    @Nullable Long length) {

  @Override
  public String toString() {
    return "Upload[" + id + "]";
  }
}
