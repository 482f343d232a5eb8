package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;

/** A small invented hospital on a running application: who is in it, and how they are. */
final class House {

  static final String WARD = "wren";
  static final String CHARGE = "charge.wren";

  private final RunningApp app;
  private final Instant admitted = Instant.now().minus(Duration.ofHours(12));

  House(RunningApp app) {
    this.app = app;
  }

  /** A charge nurse of the ward, who sees no other. */
  House staffed() {
    account(CHARGE, "Ottilie Brand", "charge", WARD);
    return this;
  }

  void account(String name, String displayName, String role, String ward) {
    var answer =
        app.put(
            RunningApp.ADMIN,
            "/api/accounts/" + name,
            """
            {"displayName": "%s", "roles": ["%s"], "wards": ["%s"], "password": "%s"}
            """
                .formatted(displayName, role, ward, RunningApp.PASSWORD));
    assertThat(answer.statusCode()).as(answer.body()).isBetween(200, 204);
  }

  void admit(String encounter, String bed, String name) {
    var answer =
        app.put(
            RunningApp.ADMIN,
            "/api/encounters/" + encounter,
            """
            {"patient": {"id": "P-%s", "name": "%s", "birthDate": "1951-06-07", "sex": "female"},
             "ward": "%s", "bed": "%s", "admitted": "%s"}
            """
                .formatted(encounter, name, WARD, bed, admitted));
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
  }

  /** NEWS2 0: every value in the zero column of RCP NEWS2 2017, chart 1. */
  void well(String encounter, String id, Instant takenAt) {
    accepted(set(encounter, id, takenAt, 16, 97, 122, 72, 36.8));
  }

  /** NEWS2 9: 3 for 26 /min, 2 for 93 %, 1 for 105 mmHg, 2 for 118 /min, 1 for 38.6 Cel. */
  void ill(String encounter, String id, Instant takenAt) {
    accepted(set(encounter, id, takenAt, 26, 93, 105, 118, 38.6));
  }

  static String set(
      String encounter,
      String id,
      Instant takenAt,
      int respiration,
      int saturation,
      int systolic,
      int pulse,
      double temperature) {
    return """
        {"id": "%s", "revision": 1, "status": "final", "encounter": "%s", "patient": "P-%s",
         "takenAt": "%s", "source": "bedside", "by": "n.brand", "findings": [
          {"code": "respiratory-rate", "value": %d, "unit": "/min"},
          {"code": "oxygen-saturation", "value": %d, "unit": "%%"},
          {"code": "inspired-oxygen", "coded": "air"},
          {"code": "systolic-pressure", "value": %d, "unit": "mm[Hg]"},
          {"code": "heart-rate", "value": %d, "unit": "/min"},
          {"code": "consciousness", "coded": "alert"},
          {"code": "temperature", "value": %s, "unit": "Cel"}]}
        """
        .formatted(
            id,
            encounter,
            encounter,
            takenAt,
            respiration,
            saturation,
            systolic,
            pulse,
            temperature);
  }

  private void accepted(String set) {
    var answer = app.post(RunningApp.ADMIN, "/api/assessments", set);
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(202);
  }
}
