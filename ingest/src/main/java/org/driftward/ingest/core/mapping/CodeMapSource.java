package org.driftward.ingest.core.mapping;

/**
 * A further place that knows foreign codes, for example a table that people edit while the house
 * runs. Every bean of this type is asked, after the catalogue and the site's file.
 */
@FunctionalInterface
public interface CodeMapSource {

  /** The map as of now; asked for every message, so it answers from memory. */
  CodeMap codes();
}
