package org.driftward.dashboard.screen;

import java.time.Instant;
import java.time.ZoneId;
import org.driftward.scoring.contract.Drift;

/**
 * How far one finding has left this patient's own usual value.
 *
 * @param value newest, with its unit
 * @param usual the baseline with its spread
 * @param drift in spreads, signed
 * @param gone whether the policy's limit is passed in the worse direction
 * @param rests what the baseline rests on
 */
public record DriftRow(
    String name, String value, String usual, String drift, boolean gone, String rests) {

  static DriftRow of(Drift drift, Findings findings, Instant now, ZoneId zone) {
    return new DriftRow(
        findings.name(drift.code(), drift.site(), drift.side()),
        Wording.withUnit(Wording.number(drift.value(), 1), drift.unit()),
        Wording.withUnit(
            Wording.number(drift.baseline(), 1) + " ± " + Wording.number(drift.spread(), 1),
            drift.unit()),
        Wording.signed(drift.drift(), 1),
        drift.worse(),
        "%s from %s to %s"
            .formatted(
                Wording.count(drift.sets(), "set", "sets"),
                Wording.time(drift.from(), now, zone),
                Wording.time(drift.until(), now, zone)));
  }
}
