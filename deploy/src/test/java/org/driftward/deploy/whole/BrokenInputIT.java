package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * Some hundred broken inputs over real HTTP to the packaged application: each is kept, or refused
 * with a reason that is counted among what Kafka keeps of refusals. Tens of thousands run beside
 * the reading code itself ({@code FhirFuzzTest}, {@code AssessmentFuzzTest}).
 */
@WithRunningApp
class BrokenInputIT {

  private static final int INPUTS = 150;

  private final RunningApp app;
  private final FhirFeed feed;
  private final Instant now = Instant.now().minusSeconds(120);

  BrokenInputIT(RunningApp app) {
    this.app = app;
    this.feed = new FhirFeed(app);
    Ward.open(app, "teasel").admit("V-5200", "2", "Harrowgate, Sunniva");
  }

  @Test
  void shouldAnswerBrokenAssessments() {
    run("/api/assessments", "application/json", "bedside", Sets.well("B-1", "V-5200", now));
  }

  @Test
  void shouldAnswerBrokenObservations() {
    run("/fhir/Observation", FhirFeed.JSON, "fhir", observation());
  }

  @Test
  void shouldAnswerBrokenBundles() {
    run(
        "/fhir",
        FhirFeed.JSON,
        "fhir",
        "{\"resourceType\": \"Bundle\", \"type\": \"transaction\", \"entry\": [{\"resource\": "
            + observation()
            + "}]}");
  }

  private void run(String path, String type, String source, String whole) {
    double before = refusals(source);
    int refused = 0;
    for (long seed = 0; seed < INPUTS; seed++) {
      var answer = feed.post(path, type, BrokenInput.of(whole, seed));
      assertThat(answer.statusCode())
          .as("seed %d: %s", seed, answer.body())
          .isIn(200, 201, 202, 400);
      if (answer.statusCode() == 400) {
        refused++;
      }
    }
    assertThat(refused).isBetween(INPUTS / 3, INPUTS - 1);
    // What is kept but not mapped is kept among the refusals, too.
    assertThat(refusals(source) - before).isBetween((double) refused, (double) INPUTS);
  }

  private double refusals(String source) {
    var line =
        Pattern.compile(
            "driftward_assessments_refused_total\\{[^}]*source=\"" + source + "\"[^}]*} (\\S+)");
    var matcher = line.matcher(app.asAdmin().get("/q/metrics").body());
    return matcher.find() ? Double.parseDouble(matcher.group(1)) : 0;
  }

  private String observation() {
    return """
    {"resourceType": "Observation", "status": "final",
     "code": {"coding": [{"system": "http://loinc.org", "code": "8310-5"}]},
     "subject": {"reference": "Patient/P-V-5200"},
     "encounter": {"reference": "Encounter/V-5200"},
     "effectiveDateTime": "%s", "issued": "%s",
     "valueQuantity": {"value": 38.2, "system": "http://unitsofmeasure.org", "code": "Cel"}}
    """
        .formatted(now, now);
  }
}
