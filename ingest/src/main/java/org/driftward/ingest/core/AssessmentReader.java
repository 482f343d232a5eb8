package org.driftward.ingest.core;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.Assessment.Status;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.Side;
import org.driftward.ingest.core.Draft.Placed;
import org.jspecify.annotations.Nullable;

/** Reads a request of one assessment, or an array of them, leniently: as much as can be read. */
public final class AssessmentReader {

  private static final List<String> VALUES = List.of("value", "grade", "coded", "text");

  private final int mostAssessments;

  public AssessmentReader(IntakeLimits limits) {
    this.mostAssessments = limits.mostAssessments();
  }

  /**
   * What a sender may leave out.
   *
   * @param recordedAt now
   * @param by the signed-in account
   */
  public record Defaults(Instant recordedAt, String by) {}

  /**
   * @param request plain Java: maps, lists, strings, numbers, booleans and nulls
   */
  public Reading read(@Nullable Object request, Defaults defaults) {
    if (!(request instanceof List<?> list)) {
      return new Reading(draft(request, "", defaults), List.of());
    }
    var faults = new Faults();
    if (list.isEmpty()) {
      faults.add("", Rule.MISSING_FIELD, "there is no assessment in the array");
    }
    if (list.size() > mostAssessments) {
      faults.add(
          "",
          Rule.TOO_MANY,
          list.size() + " assessments; send at most " + mostAssessments + " at once");
      return new Reading(List.of(), faults.list());
    }
    var drafts = new ArrayList<Draft>();
    for (int i = 0; i < list.size(); i++) {
      drafts.addAll(draft(list.get(i), "/" + i, defaults));
    }
    return new Reading(drafts, faults.list());
  }

  private static List<Draft> draft(@Nullable Object value, String pointer, Defaults defaults) {
    var faults = new Faults();
    var fields = Fields.of(value, pointer, faults);
    if (fields == null) {
      return List.of(unreadable(pointer, faults));
    }
    fields.requires("id", "encounter", "patient", "takenAt");
    var findings = new ArrayList<Placed>();
    for (var finding : fields.objects("findings")) {
      var read = finding(finding, faults);
      if (read != null) {
        findings.add(new Placed(finding.pointer(), read));
      }
    }
    return List.of(
        new Draft(
            pointer,
            fields.line("id"),
            fields.has("revision") ? fields.whole("revision") : Integer.valueOf(1),
            fields.has("status") ? fields.word("status", Status.class) : Status.FINAL,
            fields.line("encounter"),
            fields.line("patient"),
            fields.time("takenAt"),
            fields.has("recordedAt") ? fields.time("recordedAt") : defaults.recordedAt(),
            fields.has("source") ? fields.word("source", Source.class) : Source.BEDSIDE,
            fields.has("by") ? fields.line("by") : defaults.by(),
            fields.note("reason"),
            findings,
            faults.list()));
  }

  private static Draft unreadable(String pointer, Faults faults) {
    return new Draft(
        pointer,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        List.of(),
        faults.list());
  }

  private static @Nullable Finding finding(Fields fields, Faults faults) {
    fields.requires("code");
    var code = fields.line("code");
    var site = fields.line("site");
    var side = fields.word("side", Side.class);
    var value = value(fields, faults);
    boolean broken =
        code == null
            || value == null
            || (site == null && fields.has("site"))
            || (side == null && fields.has("side"));
    return broken
        ? null
        : new Finding(
            new FindingKey(Objects.requireNonNull(code), site, side),
            Objects.requireNonNull(value));
  }

  private static @Nullable FindingValue value(Fields fields, Faults faults) {
    var given = VALUES.stream().filter(fields::has).toList();
    if (given.size() != 1) {
      faults.add(
          fields.pointer(),
          given.isEmpty() ? Rule.MISSING_FIELD : Rule.WRONG_TYPE,
          "a finding has one of value, grade, coded and text, not "
              + (given.isEmpty() ? "none" : String.join(" and ", given)));
      return null;
    }
    return switch (given.get(0)) {
      case "value" -> quantity(fields);
      case "grade" -> {
        var grade = fields.whole("grade");
        yield grade == null ? null : new FindingValue.Grade(grade);
      }
      case "coded" -> {
        var coded = fields.line("coded");
        yield coded == null ? null : new FindingValue.Coded(coded);
      }
      default -> {
        var text = fields.note("text");
        yield text == null ? null : new FindingValue.Text(text);
      }
    };
  }

  private static @Nullable FindingValue quantity(Fields fields) {
    fields.requires("unit");
    var value = fields.number("value");
    var unit = fields.line("unit");
    return value == null || unit == null ? null : new FindingValue.Quantity(value, unit);
  }
}
