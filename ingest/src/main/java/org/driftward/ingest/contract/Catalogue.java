package org.driftward.ingest.contract;

import java.util.List;
import java.util.Optional;
import org.driftward.ingest.catalogue.CatalogueFiles;

/**
 * Every finding we know, in the order of a head-to-toe examination. Immutable, thread-safe.
 *
 * <p>Form, validation, FHIR and HL7 mapping, CSV header, baselines and changed-finding rules are
 * all derived from it: adding a finding is adding an entry.
 */
public interface Catalogue {

  /** In the order of the examination. */
  List<CatalogueEntry> entries();

  Optional<CatalogueEntry> find(String code);

  /**
   * The catalogue that ships with the application.
   *
   * @throws IllegalStateException naming file and line if an entry is broken
   */
  static Catalogue shipped() {
    return CatalogueFiles.shipped();
  }
}
