package org.driftward.scoring.core.policy;

import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Group;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.CatalogueEntry.Worse;
import org.driftward.ingest.contract.Word;
import org.jspecify.annotations.Nullable;

/**
 * A quantity computed from two findings of the same assessment, with baseline, drift, trend and
 * change rule like any other finding. Two findings of different assessments are never combined.
 *
 * @param code its own; not a code of the catalogue
 * @param how it is computed
 * @param of the finding's code, or the two codes of {@link How#DEFICIT}, the larger one first
 * @param unit UCUM, the unit of the findings it is made of
 * @param change smallest worsening from the usual state that counts, in {@code unit}
 * @param noise floor of the spread, in {@code unit}; null where no baseline is kept
 */
public record DerivedFinding(
    String code,
    String name,
    How how,
    List<String> of,
    String unit,
    @Nullable BigDecimal change,
    @Nullable BigDecimal noise,
    @Nullable Group group,
    String source) {

  /** The ways of combining two values. */
  public enum How implements Word {
    /** How far left and right differ, whichever is larger, at each site. */
    SIDES,
    /** The first less the second; below zero it is a counting error and there is no value. */
    DEFICIT
  }

  public DerivedFinding {
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(how, "how");
    Objects.requireNonNull(unit, "unit");
    Objects.requireNonNull(source, "source");
    of = List.copyOf(of);
    int needed = how == How.SIDES ? 1 : 2;
    if (of.size() != needed) {
      throw new IllegalArgumentException(
          code + ": " + how.word() + " takes " + needed + " codes, not " + of);
    }
  }

  /** The same as an entry of a catalogue: a difference that grows is worse. */
  public CatalogueEntry entry() {
    return new CatalogueEntry(
        code,
        name,
        "derived",
        Kind.QUANTITY,
        unit,
        List.of(),
        false,
        null,
        null,
        null,
        List.of(),
        List.of(),
        Worse.HIGHER,
        change,
        noise,
        group,
        source);
  }
}
