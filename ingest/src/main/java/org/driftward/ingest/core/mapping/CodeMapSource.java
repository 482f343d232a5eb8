package org.driftward.ingest.core.mapping;

import java.util.Optional;
import org.driftward.ingest.contract.ForeignCode;

/**
 * A further place that knows foreign codes, for example a table that people edit while the house
 * runs. Every bean of this type is asked, before the site's file and the catalogue.
 */
@FunctionalInterface
public interface CodeMapSource {

  /** The map as of now; asked for every message, so it answers from memory. */
  CodeMap codes();

  /** A map that asks the source anew each time. */
  default CodeMap live() {
    return new CodeMap() {
      @Override
      public Optional<Meaning> find(ForeignCode code) {
        return codes().find(code);
      }

      @Override
      public Optional<String> unit(String word) {
        return codes().unit(word);
      }

      @Override
      public Optional<String> answer(String system, String code, String finding) {
        return codes().answer(system, code, finding);
      }

      @Override
      public boolean isPanel(String system, String code) {
        return codes().isPanel(system, code);
      }
    };
  }
}
