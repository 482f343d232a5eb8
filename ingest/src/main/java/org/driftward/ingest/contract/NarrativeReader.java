package org.driftward.ingest.contract;

import org.driftward.ingest.narrative.NarrativeFiles;

/**
 * Reads an examination that was said or typed. Deterministic, without network and without a trained
 * model. Immutable, thread-safe.
 */
@FunctionalInterface
public interface NarrativeReader {

  /**
   * @param text of at most {@link Narrative#LONGEST} code units
   * @throws IllegalArgumentException if it is longer
   */
  Narrative read(String text);

  /**
   * The reader of the shipped catalogue with the shipped words.
   *
   * @throws IllegalStateException naming file and entry if the words are broken
   */
  static NarrativeReader shipped() {
    return NarrativeFiles.shipped();
  }
}
