package org.driftward.deploy.demo;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Patient.Sex;

/** Two invented wards with twenty beds each, all taken. */
final class DemoHospital {

  static final String SURGICAL = "heron";
  static final String MEDICAL = "kestrel";

  private static final List<String> FAMILY =
      List.of(
          "Quillwater",
          "Ashenbrook",
          "Tarnley",
          "Merrowdown",
          "Oxbarrow",
          "Pellinore-Vance",
          "Sedgewick",
          "Brackenhall",
          "Ferncastle",
          "Dunmarrow",
          "Halewater",
          "Ivelstone",
          "Lockmere",
          "Nettleship",
          "Orrinsby",
          "Penhallick",
          "Ravensworth",
          "Stonehewer",
          "Thistlewood",
          "Underbridge");
  private static final List<String> GIVEN_FEMALE =
      List.of(
          "Maren",
          "Odile",
          "Tamsin",
          "Isolde",
          "Perpetua",
          "Linnea",
          "Rowena",
          "Saskia",
          "Thirza",
          "Verity");
  private static final List<String> GIVEN_MALE =
      List.of(
          "Anselm",
          "Caspian",
          "Emeric",
          "Florian",
          "Ignatius",
          "Jory",
          "Leopold",
          "Magnus",
          "Osric",
          "Tobias");

  /** Beds with a story; every other bed holds a stable patient. */
  private static final Map<String, Course> STORIES =
      Map.of(
          "heron A2", Courses.opioidSedation(),
          "heron B3", Courses.postoperativeInfection(),
          "heron C1", Courses.bleed(),
          "heron D4", Courses.recovering(),
          "heron B5", Courses.missingSets(),
          "kestrel A3", Courses.hypercapnic(),
          "kestrel B1", Courses.stroke(),
          "kestrel C4", Courses.heartFailure(),
          "kestrel D2", Courses.agreedCeiling(),
          "kestrel D5", Courses.recovering());

  private static final Map<String, DemoPatient.Plan> PLANS =
      Map.of(
          "kestrel A3",
          new DemoPatient.Plan(2, null, "Known hypercapnic respiratory failure, target 88 to 92 %"),
          "kestrel D2",
          new DemoPatient.Plan(
              1,
              "Ward-based care, no transfer to intensive care",
              "Agreed with the patient and the family"));

  private DemoHospital() {}

  static List<DemoPatient> patients() {
    var patients = new ArrayList<DemoPatient>();
    for (var ward : List.of(SURGICAL, MEDICAL)) {
      for (var bay : List.of("A", "B", "C", "D")) {
        for (int bed = 1; bed <= 5; bed++) {
          patients.add(patient(patients.size(), ward, bay + bed));
        }
      }
    }
    return List.copyOf(patients);
  }

  private static DemoPatient patient(int number, String ward, String bed) {
    var place = ward + " " + bed;
    var story = STORIES.get(place);
    var course = story == null ? Courses.stable(number) : story;
    var lag = story == null ? Duration.ofMinutes(number * 11L % 230) : Duration.ZERO;
    return new DemoPatient(number, person(number), ward, bed, course, lag, PLANS.get(place));
  }

  private static Patient person(int number) {
    boolean female = number % 2 == 0;
    var given = (female ? GIVEN_FEMALE : GIVEN_MALE).get((number / 2) % 10);
    var family = FAMILY.get((number * 7 + number / 20) % FAMILY.size());
    var born = LocalDate.of(1934 + (number * 11) % 54, 1 + number % 12, 1 + (number * 5) % 28);
    return new Patient(
        "P-" + (70200 + number), family + ", " + given, born, female ? Sex.FEMALE : Sex.MALE);
  }
}
