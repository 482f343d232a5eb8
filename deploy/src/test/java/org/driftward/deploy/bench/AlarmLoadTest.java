package org.driftward.deploy.bench;

import static org.assertj.core.api.Assertions.assertThat;

import org.driftward.ingest.contract.Level;
import org.junit.jupiter.api.Test;

/** What docs/alarm-load.md claims in words, over a shorter stretch. */
class AlarmLoadTest {

  @Test
  void shouldSoundFewerAlarmsWithEachThingThatKeepsThemFew() {
    var load = new AlarmLoad(3);
    var rows = load.rows();

    assertThat(load.beds()).isEqualTo(40);
    assertThat(rows.get(1).alarms()).isLessThan(rows.get(0).alarms());
    assertThat(rows.get(3).alarms()).isLessThan(rows.get(2).alarms());
    assertThat(rows).allSatisfy(row -> assertThat(row.byLevel().get(Level.HIGH)).isGreaterThan(0));
  }
}
