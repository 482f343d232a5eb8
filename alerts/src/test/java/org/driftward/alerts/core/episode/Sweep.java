package org.driftward.alerts.core.episode;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Preview;
import org.driftward.scoring.contract.Preview.Known;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.core.timeline.Editions;
import org.driftward.scoring.core.timeline.Judge;
import org.driftward.scoring.core.timeline.Timeline;
import org.driftward.scoring.definition.ScoreBooks;
import org.driftward.scoring.policy.PolicyFile;
import org.jspecify.annotations.Nullable;

/** Patients, their values from well to worst, and what the real judge says of two sets running. */
final class Sweep {

  static final Duration BETWEEN = Duration.ofMinutes(10);

  private static final Catalogue CATALOGUE = Catalogue.shipped();
  private static final Preview PREVIEW =
      new Timeline(
              Editions.only(
                  new Judge(CATALOGUE, ScoreBooks.shipped(CATALOGUE), PolicyFile.shipped())))
          .preview();

  private static final Map<String, String> WELL =
      Map.of(
          "respiratory-rate", "14",
          "oxygen-saturation", "97",
          "inspired-oxygen", "air",
          "systolic-pressure", "120",
          "diastolic-pressure", "80",
          "heart-rate", "70",
          "consciousness", "alert",
          "temperature", "36.8");

  /** From well to worst, in one direction each. */
  static final List<Ladder> LADDERS =
      List.of(
          new Ladder("oxygen-saturation", "97", "93", "91", "88", "80", "70", "50"),
          new Ladder("respiratory-rate", "14", "22", "26", "35", "50"),
          new Ladder("respiratory-rate", "14", "10", "8", "5", "0"),
          new Ladder("systolic-pressure", "120", "105", "95", "85", "60", "40"),
          new Ladder("systolic-pressure", "120", "200", "225", "260"),
          new Ladder("heart-rate", "70", "100", "120", "140", "180", "220"),
          new Ladder("heart-rate", "70", "48", "39", "30", "20"),
          new Ladder("temperature", "36.8", "38.5", "39.5", "41.5"),
          new Ladder("temperature", "36.8", "35.5", "34.5", "30"),
          new Ladder("consciousness", "alert", "confused", "voice", "pain", "unresponsive"));

  /** Values of one finding, each worse than the one before. */
  record Ladder(String code, List<String> values) {
    Ladder(String code, String... values) {
      this(code, List.of(values));
    }
  }

  /** Whose body it is. */
  enum Who {
    ADULT(40),
    UNKNOWN_AGE(null),
    SCALE_2(40),
    PREGNANT(30),
    INFANT(0),
    CHILD(5),
    YOUTH(13);

    private final @Nullable Integer years;

    Who(@Nullable Integer years) {
      this.years = years;
    }

    private Map<String, String> well() {
      var values = new LinkedHashMap<>(WELL);
      if (years != null && years < 16) {
        values.put("child-behaviour", "appropriate");
        values.put("child-colour", "pink");
        values.put("child-breathing-effort", "normal");
        values.put("nebulisers", "none");
        values.put("vomiting", "none");
        values.put("heart-rate", years == 0 ? "130" : years == 5 ? "100" : "80");
        values.put("respiratory-rate", years == 0 ? "38" : years == 5 ? "22" : "16");
        values.put("systolic-pressure", years == 0 ? "85" : years == 5 ? "98" : "112");
      }
      return values;
    }

    private List<CarePlan> plans() {
      boolean pregnant = this == PREGNANT;
      if (!pregnant && this != SCALE_2) {
        return List.of();
      }
      return List.of(
          new CarePlan(
              "V-1",
              1,
              this == SCALE_2 ? 2 : 1,
              List.of(),
              null,
              null,
              null,
              pregnant ? List.of("pregnant") : List.of(),
              null,
              "known",
              "c",
              Bedside.START.minusSeconds(60),
              Bedside.START.plusSeconds(86_400)));
    }

    /** The pictures after each of these values, everything else being well. */
    List<Snapshot> pictures(String code, List<String> values) {
      var born = years == null ? null : LocalDate.parse("2025-06-01").minusYears(years);
      var encounter =
          new Encounter(
              "V-1",
              new Patient("P-1", null, born, null),
              List.of(new Stay("LINDEN", "1", Bedside.START.minusSeconds(3600))),
              Bedside.START.minusSeconds(3600),
              null,
              null,
              1);
      var known = new ArrayList<Assessment>();
      var pictures = new ArrayList<Snapshot>();
      for (var value : values) {
        var taken = Bedside.START.plus(BETWEEN.multipliedBy(known.size()));
        var set = set("A-" + known.size(), taken, code, value);
        var outlook = PREVIEW.of(new Known(encounter, plans(), known), set);
        known.add(set);
        pictures.add(outlook.newest().sent(known.size(), true, null));
      }
      return pictures;
    }

    private Assessment set(String id, Instant taken, String code, String value) {
      var values = well();
      values.put(code, value);
      return new Assessment(
          id,
          1,
          Assessment.Status.FINAL,
          "V-1",
          "P-1",
          taken,
          taken,
          Assessment.Source.BEDSIDE,
          "n",
          null,
          values.entrySet().stream().map(e -> finding(e.getKey(), e.getValue())).toList());
    }
  }

  private Sweep() {}

  private static Finding finding(String code, String value) {
    var entry = CATALOGUE.find(code).orElseThrow();
    return entry.kind() == Kind.QUANTITY
        ? Finding.quantity(code, new BigDecimal(value).toPlainString(), entry.unit())
        : Finding.coded(code, value);
  }
}
