package org.driftward.scoring.core.change;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Locale;
import java.util.Objects;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.scoring.contract.ChangedFinding;
import org.driftward.scoring.contract.Plain;
import org.driftward.scoring.contract.Scalar;
import org.driftward.scoring.core.Reading;

/** Says in words what changed from the patient's usual state. */
final class Change {

  private Change() {}

  static ChangedFinding of(SeriesRule rule, Reading newest, Baseline usual, Instant since) {
    var key = newest.key();
    var from = scalar(rule, usual.centre());
    var to = Scalar.of(newest.value());
    var group = Objects.requireNonNull(rule.group(), "a change that counts has a group");
    return new ChangedFinding(
        key.code(),
        key.site(),
        key.side(),
        from,
        to,
        since,
        group,
        words(rule, key, from, to, usual.sets()));
  }

  private static Scalar scalar(SeriesRule rule, double level) {
    if (!rule.options().isEmpty()) {
      return Scalar.of(rule.options().get((int) level));
    }
    var number = BigDecimal.valueOf(level).stripTrailingZeros();
    return Scalar.of(number.scale() < 0 ? number.setScale(0) : number);
  }

  private static String words(SeriesRule rule, FindingKey key, Scalar from, Scalar to, int sets) {
    return rule.name()
        + place(key)
        + ": "
        + to.plain()
        + Plain.unit(rule.unit())
        + ", usually "
        + from.plain()
        + Plain.unit(rule.unit())
        + String.format(Locale.ROOT, " (%d earlier %s)", sets, sets == 1 ? "value" : "values");
  }

  private static String place(FindingKey key) {
    var site = key.site() == null ? "" : " " + key.site().replace('-', ' ');
    return key.side() == null ? site : site + " " + key.side().word();
  }
}
