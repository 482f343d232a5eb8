package org.driftward.alerts.core.shift;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.driftward.alerts.contract.Duty;
import org.driftward.alerts.contract.Shift;
import org.driftward.alerts.core.policy.Audience;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Who is meant, and who comes after. Common practice of nursing shifts, no source. */
class RosterTest {

  private static final Instant NOW = Instant.parse("2026-01-05T07:00:00Z");

  private final Shift gone = shift("S-1", Duty.BEDSIDE, "anna", "4").endedAt(NOW, null);
  private final Shift bedside = shift("S-2", Duty.BEDSIDE, "bert", "4", "5");
  private final Shift charge = shift("S-3", Duty.CHARGE, "cara");

  @Test
  void shouldFindTheNurseOfTheBedAndTheChargeNurse() {
    var roster = new Roster(List.of(gone, bedside, charge));

    assertThat(roster.of(Audience.BEDSIDE_NURSE, "alder", "5")).containsExactly(bedside);
    assertThat(roster.of(Audience.BEDSIDE_NURSE, "alder", "6")).isEmpty();
    assertThat(roster.of(Audience.BEDSIDE_NURSE, "alder", null)).isEmpty();
    assertThat(roster.of(Audience.CHARGE_NURSE, "alder", "6")).containsExactly(charge);
    assertThat(roster.of(Audience.CHARGE_NURSE, "birch", "6")).isEmpty();
  }

  @Test
  void shouldFindTheTeamOfEveryWard() {
    var team =
        new Shift("S-4", "*", Duty.RESPONSE, "dora", "Dora", Set.of(), NOW, in(9), null, null);

    assertThat(new Roster(List.of(team)).of(Audience.RESPONSE_TEAM, "alder", "4"))
        .containsExactly(team);
  }

  @Test
  void shouldCallNobodyOffDutyOfWhomNoShiftWasKept() {
    var roster = new Roster(List.of(gone, bedside));

    assertThat(roster.off("anna")).isTrue();
    assertThat(roster.off("bert")).isFalse();
    assertThat(roster.off("nobody")).isFalse();
  }

  @Test
  void shouldPreferWhoeverTookOverThenTheBedThenTheCharge() {
    var taker = shift("S-9", Duty.BEDSIDE, "emil", "8");
    var taken = gone.endedAt(NOW, "S-9");

    var all = new Roster(List.of(taken, taker, bedside, charge));
    assertThat(all.successor("anna", "alder")).contains(taker);
    assertThat(all.successor("anna", "birch")).as("not there for the ward").isEmpty();
    assertThat(new Roster(List.of(gone, bedside, charge)).successor("anna", "alder")).isEmpty();
    assertThat(new Roster(List.of(gone, bedside, charge)).answering("anna", "alder", "4"))
        .contains(bedside);
    assertThat(new Roster(List.of(gone, bedside, charge)).answering("anna", "alder", "9"))
        .contains(charge);
    assertThat(new Roster(List.of(gone, bedside)).answering("anna", "alder", "9")).isEmpty();
  }

  @Test
  void shouldNeverPassBackToWhoeverIsGone() {
    assertThat(new Roster(List.of(charge)).answering("cara", "alder", "4")).isEmpty();
  }

  @Test
  void shouldKnowWhetherAWardKeepsShifts() {
    var roster = new Roster(List.of(gone, bedside));

    assertThat(roster.kept("alder")).isTrue();
    assertThat(roster.kept("birch")).isFalse();
    assertThat(roster.on("bert", "alder")).isTrue();
    assertThat(roster.on("bert", "birch")).isFalse();
    assertThat(roster.on("anna", "alder")).as("has gone").isFalse();
  }

  @Test
  void shouldNotPassToSuccessorWhoHasGoneAsWell() {
    var taken = gone.endedAt(NOW, "S-9");
    var taker = shift("S-9", Duty.BEDSIDE, "emil", "8").endedAt(NOW, null);

    assertThat(new Roster(List.of(taken, taker, charge)).successor("anna", "alder")).isEmpty();
  }

  private static Shift shift(String id, Duty duty, String account, String... beds) {
    return shift(id, duty, account, Set.of(beds), null);
  }

  private static Shift shift(
      String id, Duty duty, String account, Set<String> beds, @Nullable Instant ended) {
    return new Shift(
        id, "alder", duty, account, account, beds, NOW.minusSeconds(60), in(8), ended, null);
  }

  private static Instant in(int hours) {
    return NOW.plusSeconds(hours * 3600L);
  }
}
