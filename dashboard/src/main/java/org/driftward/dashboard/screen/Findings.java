package org.driftward.dashboard.screen;

import java.util.List;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.Side;
import org.jspecify.annotations.Nullable;

/** Names findings as people say them. */
public final class Findings {

  private final Catalogue catalogue;

  public Findings(Catalogue catalogue) {
    this.catalogue = catalogue;
  }

  /** The catalogue's name; a code it does not list (a score, an input of one) is spelt out. */
  public String name(String code) {
    return catalogue.find(code).map(CatalogueEntry::name).orElseGet(() -> Wording.sentence(code));
  }

  /** {@code Pulse amplitude, left dorsalis pedis}. */
  public String name(String code, @Nullable String site, @Nullable Side side) {
    var name = new StringBuilder(name(code));
    if (side != null || site != null) {
      name.append(',');
    }
    if (side != null) {
      name.append(' ').append(side.word());
    }
    if (site != null) {
      name.append(' ').append(site.replace('-', ' '));
    }
    return name.toString();
  }

  /** The catalogue's UCUM unit, or null. */
  public @Nullable String unit(String code) {
    return catalogue.find(code).map(CatalogueEntry::unit).orElse(null);
  }

  /** The words of a coded finding, from best to worst; empty for others. */
  public List<String> options(String code) {
    return catalogue.find(code).map(CatalogueEntry::options).orElse(List.of());
  }

  /** The range of a well adult in words, or empty. */
  public String expected(String code) {
    return catalogue
        .find(code)
        .map(CatalogueEntry::expected)
        .map(range -> Wording.number(range.low()) + " to " + Wording.number(range.high()))
        .orElse("");
  }
}
