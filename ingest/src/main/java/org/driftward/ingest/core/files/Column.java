package org.driftward.ingest.core.files;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.Side;
import org.driftward.ingest.contract.Word;
import org.jspecify.annotations.Nullable;

/** What a column of a file holds. Its name says it all, so that no unit is ever guessed. */
public sealed interface Column {

  /** What an assessment has besides its findings; {@code revision} is a whole number. */
  List<String> FIELDS =
      List.of(
          "id",
          "revision",
          "status",
          "encounter",
          "patient",
          "takenAt",
          "recordedAt",
          "source",
          "by",
          "reason");

  /** As it stands in our own header. */
  String name();

  /** A field of the assessment. */
  record Field(String name) implements Column {
    public Field {
      Objects.requireNonNull(name, "name");
    }
  }

  /**
   * A finding: {@code heart-rate [/min]}, {@code capillary-refill@toe/left [s]}, {@code
   * pain-score}.
   *
   * @param unit UCUM unit of the values below; null where the finding is no quantity
   */
  record Measured(FindingKey key, CatalogueEntry entry, @Nullable String unit) implements Column {
    public Measured {
      Objects.requireNonNull(key, "key");
      Objects.requireNonNull(entry, "entry");
      if ((unit != null) != (entry.kind() == Kind.QUANTITY)) {
        throw new IllegalArgumentException(key.code() + ": a quantity, and only one, has a unit");
      }
    }

    @Override
    public String name() {
      return key.code()
          + (key.site() == null ? "" : "@" + key.site())
          + (key.side() == null ? "" : "/" + key.side().word())
          + (unit == null ? "" : " [" + unit + "]");
    }
  }

  /** A column that a mapping says to leave out. */
  record Ignored(String name) implements Column {
    public Ignored {
      Objects.requireNonNull(name, "name");
    }
  }

  /** The full header: the fields, then every finding at every site and side, as examined. */
  static List<String> header(Catalogue catalogue) {
    var header = new ArrayList<String>(FIELDS);
    for (var entry : catalogue.entries()) {
      List<@Nullable String> sites = new ArrayList<>(entry.sites());
      if (sites.isEmpty()) {
        sites.add(null);
      }
      for (var site : sites) {
        if (entry.sided()) {
          for (var side : Side.values()) {
            header.add(measured(entry, site, side).name());
          }
        } else {
          header.add(measured(entry, site, null).name());
        }
      }
    }
    return List.copyOf(header);
  }

  private static Measured measured(
      CatalogueEntry entry, @Nullable String site, @Nullable Side side) {
    return new Measured(new FindingKey(entry.code(), site, side), entry, entry.unit());
  }

  /**
   * The column of a name of our own header. Whether site and side belong to the finding is judged
   * with the row.
   *
   * @param why is told in words why there is no such column
   */
  static Optional<Column> named(String name, Catalogue catalogue, Consumer<String> why) {
    if (FIELDS.contains(name)) {
      return Optional.of(new Field(name));
    }
    var unit = name.endsWith("]") && name.contains(" [") ? name.indexOf(" [") : name.length();
    var what = name.substring(0, unit);
    int slash = what.indexOf('/');
    var sideWord = slash < 0 ? null : what.substring(slash + 1);
    var place = slash < 0 ? what : what.substring(0, slash);
    int at = place.indexOf('@');
    var code = at < 0 ? place : place.substring(0, at);
    var entry = catalogue.find(code);
    if (entry.isEmpty()) {
      why.accept("this column is neither a field nor a finding of the catalogue");
      return Optional.empty();
    }
    Side side;
    try {
      side = sideWord == null ? null : Word.parse(Side.class, sideWord);
    } catch (IllegalArgumentException e) {
      why.accept(String.valueOf(e.getMessage()));
      return Optional.empty();
    }
    var written = unit == name.length() ? null : name.substring(unit + 2, name.length() - 1);
    return withUnit(
        new FindingKey(code, at < 0 ? null : place.substring(at + 1), side),
        entry.get(),
        written,
        why);
  }

  private static Optional<Column> withUnit(
      FindingKey key, CatalogueEntry entry, @Nullable String unit, Consumer<String> why) {
    boolean needed = entry.kind() == Kind.QUANTITY;
    if (needed == (unit != null)) {
      return Optional.of(new Measured(key, entry, unit));
    }
    why.accept(
        needed
            ? "say the unit in the column's name: " + measured(entry, key.site(), key.side()).name()
            : entry.code() + " is a " + entry.kind().word() + " and has no unit");
    return Optional.empty();
  }
}
