package org.driftward.deploy.demo;

import static org.driftward.ingest.contract.Side.LEFT;
import static org.driftward.ingest.contract.Side.RIGHT;

import java.math.BigDecimal;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue.Grade;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.ingest.contract.Side;

/**
 * The courses of the demo. Columns: time, interval, respiration /min, saturation %, oxygen L/min,
 * pressure mmHg, pulse /min, consciousness, temperature Cel. All invented.
 */
final class Courses {

  private Courses() {}

  /** Well and staying so. {@code shift} tells one quiet patient from the next. */
  static Course stable(int shift) {
    int s = shift % 5;
    return Course.of(
        """
        -36:00 4:00 %d %d air %d/%d %d alert 36.%d
         0:00  4:00 %d %d air %d/%d %d alert 36.%d
        24:00  4:00 %d %d air %d/%d %d alert 36.%d
        """
            .formatted(
                14 + s % 3,
                97 + s % 2,
                118 + 4 * s,
                70 + 2 * s,
                66 + 4 * s,
                5 + s % 4,
                15 + s % 3,
                97 + s % 2,
                120 + 4 * s,
                72 + 2 * s,
                68 + 4 * s,
                6 + s % 3,
                14 + s % 3,
                97 + s % 2,
                118 + 4 * s,
                70 + 2 * s,
                66 + 4 * s,
                5 + s % 4));
  }

  /** Slowly better: came in unwell, leaves the danger behind. */
  static Course recovering() {
    return Course.of(
        """
        -36:00 1:00 25 92 2   104/62 112 alert 38.6
        -18:00 4:00 21 94 2   110/66 98  alert 38.0
         0:00  4:00 19 95 1   116/70 88  alert 37.4
        10:00  4:00 17 96 air 120/72 80  alert 37.0
        24:00  4:00 16 96 air 122/74 78  alert 36.8
        """);
  }

  /** An infection after an operation: slides for hours before any single sign alarms. */
  static Course postoperativeInfection() {
    return Course.of(
        """
        -36:00 4:00 15 97 air 128/76 74  alert    36.8
        -8:00  4:00 16 97 air 126/74 78  alert    37.1
        -3:00  1:00 18 96 air 120/70 86  alert    37.7
         0:00  0:30 19 95 air 116/68 92  alert    38.1
         0:20  0:20 22 94 air 108/62 104 alert    38.6
         1:10  0:15 25 92 2   99/56  116 alert    39.0
         2:30  0:15 27 91 4   92/50  124 confused 39.2
         5:00  0:30 24 93 4   101/58 112 alert    38.6
         9:00  1:00 20 95 2   112/66 96  alert    37.8
        16:00  4:00 17 96 air 122/72 84  alert    37.2
        24:00  4:00 15 97 air 126/74 76  alert    36.8
        """);
  }

  /** Sedation by an opioid: breathing slows before anything else, and it goes fast. */
  static Course opioidSedation() {
    return Course.of(
        """
        -36:00 4:00 14 98 air 126/74 72 alert 36.7
         0:00  0:10 12 97 air 122/72 68 alert 36.7
         0:08  0:05 10 95 air 118/70 64 alert 36.6
         0:15  0:05 8  92 air 112/66 60 voice 36.5
         0:28  0:05 7  89 2   106/62 56 voice 36.4
         1:00  0:10 11 95 4   116/68 66 alert 36.5
         2:00  0:30 14 97 2   122/72 70 alert 36.6
         4:00  4:00 15 98 air 126/74 72 alert 36.7
        24:00  4:00 14 98 air 126/74 72 alert 36.7
        """);
  }

  /** A bleed: the pulse climbs and the pressures close in before the systolic falls. */
  static Course bleed() {
    return Course.of(
        """
        -36:00 4:00 15 98 air 132/78 76  alert    36.7
         0:00  1:00 16 98 air 130/78 80  alert    36.7
         0:30  0:20 18 97 air 122/80 96  alert    36.6
         1:10  0:15 21 96 air 108/78 114 alert    36.4
         1:50  0:10 25 94 4   88/60  134 confused 36.0
         3:30  0:15 22 96 4   98/60  118 alert    36.2
         7:00  1:00 18 97 2   112/68 98  alert    36.6
        14:00  4:00 16 98 air 124/74 84  alert    36.8
        24:00  4:00 15 98 air 132/78 76  alert    36.7
        """);
  }

  /** Lives at a saturation near 90 %: quiet on oxygen scale 2, alarming on scale 1. */
  static Course hypercapnic() {
    return Course.of(
        """
        -36:00 4:00 20 90 1 128/74 86 alert 36.9
         0:00  4:00 20 90 1 128/74 86 alert 36.9
         4:00  1:00 23 87 1 132/76 96 alert 37.2
         8:00  4:00 20 90 2 128/74 88 alert 37.0
        24:00  4:00 20 90 1 128/74 86 alert 36.9
        """);
  }

  /** A stroke: hardly a point on any score, and yet everything has changed. */
  static Course stroke() {
    return Course.of(
            """
            -36:00 4:00 15 97 air 146/84 78 alert    36.8
             0:00  1:00 15 97 air 148/84 78 alert    36.8
             0:45  0:30 16 97 air 168/92 82 alert    36.9
             1:30  0:30 16 96 air 176/96 84 confused 36.9
             8:00  2:00 16 96 air 160/90 80 alert    36.9
            24:00  4:00 15 97 air 148/84 78 alert    36.8
            """)
        .examined("PT-36H", limbs(5, 5, 5, 5, 3, 3))
        .examined("PT45M", limbs(5, 3, 5, 4, 3, 3))
        .examined("PT1H30M", limbs(5, 2, 5, 3, 3, 5))
        .examined("PT8H", limbs(5, 3, 5, 4, 3, 4));
  }

  /** Heart failure: breath shortens and weight of water grows through the night. */
  static Course heartFailure() {
    return Course.of(
        """
        -36:00 4:00 18 95 air 118/70 84  alert 36.6
        -6:00  2:00 19 95 air 116/70 88  alert 36.6
         0:00  1:00 20 94 air 114/70 92  alert 36.6
         2:00  0:30 23 93 1   108/68 102 alert 36.5
         5:00  0:30 26 91 3   102/64 112 alert 36.5
         9:00  1:00 22 94 3   108/66 98  alert 36.6
        16:00  4:00 19 95 1   114/70 90  alert 36.6
        24:00  4:00 18 95 air 118/70 84  alert 36.6
        """);
  }

  /** Nobody finds the thermometer, and the cuff is in use elsewhere. */
  static Course missingSets() {
    return Course.of(
            """
            -36:00 4:00  17 96 air 122/72 84 alert 37.0
             0:00  9:00  18 96 air 118/70 90 alert 37.2
            24:00  4:00  17 96 air 122/72 84 alert 37.0
            """)
        .without("systolic-pressure", "diastolic-pressure", "temperature");
  }

  /** Very ill, with an agreed ceiling of care: the score stays high, the response is another. */
  static Course agreedCeiling() {
    return Course.of(
        """
        -36:00 4:00 22 93 2 104/60 98  alert    37.4
         0:00  4:00 24 92 2 100/58 104 alert    37.6
         6:00  4:00 26 91 4 96/54  112 confused 37.8
        24:00  4:00 23 92 2 102/60 100 alert    37.5
        """);
  }

  private static Finding[] limbs(
      int rightArm, int leftArm, int rightLeg, int leftLeg, int leftPupil, int rightPupil) {
    return new Finding[] {
      strength("arm", RIGHT, rightArm),
      strength("arm", LEFT, leftArm),
      strength("leg", RIGHT, rightLeg),
      strength("leg", LEFT, leftLeg),
      pupil(LEFT, leftPupil),
      pupil(RIGHT, rightPupil)
    };
  }

  private static Finding strength(String site, Side side, int grade) {
    return new Finding(new FindingKey("muscle-strength", site, side), new Grade(grade));
  }

  private static Finding pupil(Side side, int millimetres) {
    return new Finding(
        new FindingKey("pupil-size", null, side),
        new Quantity(BigDecimal.valueOf(millimetres), "mm"));
  }
}
