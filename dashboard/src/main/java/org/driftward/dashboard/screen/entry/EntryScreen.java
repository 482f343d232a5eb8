package org.driftward.dashboard.screen.entry;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.driftward.dashboard.core.StayRecord;
import org.driftward.dashboard.screen.Identity;
import org.driftward.dashboard.screen.Wording;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.jspecify.annotations.Nullable;

/**
 * The bedside entry page.
 *
 * @param who the patient
 * @param assessment id of what is being recorded, made once for this page
 * @param revision of what is being recorded
 * @param regions every region of the catalogue, in the order of the examination
 * @param only the one region that the person wants to record, or empty for all
 * @param correction what is being corrected, or null for a new assessment
 */
public record EntryScreen(
    Identity who,
    String assessment,
    int revision,
    List<EntryRegion> regions,
    String only,
    @Nullable Correction correction) {

  /**
   * An earlier assessment that is being corrected or retracted.
   *
   * @param takenAt when its findings were true
   * @param words when and by whom it was taken
   */
  public record Correction(Instant takenAt, String words) {}

  public EntryScreen {
    regions = List.copyOf(regions);
  }

  /**
   * @param id for a new assessment
   * @param correct the assessment to correct, or null
   * @param only a region of the catalogue, or null for the whole examination
   * @param names people's names by account
   */
  public static EntryScreen of(
      StayRecord record,
      Catalogue catalogue,
      String id,
      @Nullable Assessment correct,
      @Nullable String only,
      UnaryOperator<String> names,
      ZoneId zone) {
    var now = record.view().asOf();
    Map<FindingKey, FindingValue> corrected =
        correct == null
            ? Map.of()
            : correct.findings().stream().collect(Collectors.toMap(Finding::key, Finding::value));
    var newest = record.newest();
    boolean known = catalogue.entries().stream().anyMatch(entry -> entry.region().equals(only));
    return new EntryScreen(
        Identity.of(record.view().encounter(), now, zone),
        correct == null ? id : correct.id(),
        correct == null ? 1 : correct.revision() + 1,
        Regions.of(
            catalogue,
            new Fields(newest, corrected, OneTouch.of(catalogue, record), names, now, zone),
            known ? only : null),
        only == null || !known ? "" : only,
        correct == null ? null : correction(correct, names, now, zone));
  }

  private static Correction correction(
      Assessment correct, UnaryOperator<String> names, Instant now, ZoneId zone) {
    return new Correction(
        correct.takenAt(),
        "taken %s by %s"
            .formatted(Wording.time(correct.takenAt(), now, zone), names.apply(correct.by())));
  }

  /** The region that is enough by itself. */
  public String vitalSigns() {
    return Regions.VITAL_SIGNS;
  }

  public boolean whole() {
    return only.isEmpty();
  }

  /** Says nothing about the patient. */
  @Override
  public String toString() {
    return "EntryScreen[" + who.encounter() + "]";
  }
}
