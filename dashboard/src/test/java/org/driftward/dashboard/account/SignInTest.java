package org.driftward.dashboard.account;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Set;
import javax.sql.DataSource;
import org.driftward.dashboard.Configs;
import org.driftward.dashboard.DashboardDatabase;
import org.driftward.dashboard.account.SignIn.Answer;
import org.driftward.dashboard.config.DashboardConfig;
import org.driftward.dashboard.contract.Accounts.Account;
import org.driftward.ground.store.Database;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Accounts and failures on a real PostgreSQL. The least cost of bcrypt, for speed. */
class SignInTest {

  private static final DashboardConfig CONFIG =
      Configs.of(
          Map.of(
              "driftward.dashboard.sign-in.cost", "4",
              "driftward.dashboard.sign-in.failures", "3",
              "driftward.dashboard.sign-in.failures-anywhere", "6"));
  private static final Account NURSE = account("nurse", "bedside", "W1");
  private static final String RIGHT = "correct horse battery";

  private final MovedClock clock = new MovedClock();
  private StoredAccounts accounts;
  private SignIn signIn;

  @BeforeEach
  void empty() {
    DataSource database = DashboardDatabase.emptied();
    accounts = new StoredAccounts(new Database(database), CONFIG);
    signIn = new SignIn(accounts, new Database(database), CONFIG, clock);
    accounts.put(NURSE, RIGHT);
  }

  @Test
  void shouldWelcomeTheRightPasswordAndNoOther() {
    assertThat(signIn.attempt("nurse", RIGHT, "a")).isEqualTo(new Answer.Welcome(NURSE));
    assertThat(signIn.attempt("nurse", RIGHT + " ", "a")).isEqualTo(new Answer.Refused());
    assertThat(signIn.attempt("Nurse", RIGHT, "a")).isEqualTo(new Answer.Refused());
    assertThat(signIn.attempt("nobody", RIGHT, "a")).isEqualTo(new Answer.Refused());
  }

  @Test
  void shouldMakeTheOneWhoGuessesWaitAndNobodyElse() {
    fail("nurse", "a", 3);

    assertThat(signIn.attempt("nurse", RIGHT, "a"))
        .isEqualTo(new Answer.Wait(clock.instant().plusSeconds(10)));
    assertThat(signIn.attempt("nurse", RIGHT, "b")).isInstanceOf(Answer.Welcome.class);
  }

  @Test
  void shouldTryAgainWhenTheWaitIsOver() {
    fail("nurse", "a", 3);
    clock.forward(Duration.ofSeconds(10).minusMillis(1));
    assertThat(signIn.attempt("nurse", RIGHT, "a")).isInstanceOf(Answer.Wait.class);
    clock.forward(Duration.ofMillis(1));
    assertThat(signIn.attempt("nurse", RIGHT, "a")).isInstanceOf(Answer.Welcome.class);
  }

  @Test
  void shouldStartCountingAnewAfterAWelcome() {
    fail("nurse", "a", 2);
    signIn.attempt("nurse", RIGHT, "a");
    fail("nurse", "a", 2);

    assertThat(signIn.attempt("nurse", RIGHT, "a")).isInstanceOf(Answer.Welcome.class);
  }

  @Test
  void shouldSlowGuessingFromManyPlacesButNeverForLong() {
    for (int i = 0; i < 40; i++) {
      signIn.attempt("nurse", "guess", "address " + i);
      clock.forward(Duration.ofSeconds(10));
    }
    signIn.attempt("nurse", "guess", "another");

    assertThat(signIn.attempt("nurse", RIGHT, "home"))
        .isEqualTo(new Answer.Wait(clock.instant().plusSeconds(10)));
  }

  @Test
  void shouldTreatAnUnknownNameLikeAKnownOne() {
    fail("nobody", "a", 3);

    assertThat(signIn.attempt("nobody", RIGHT, "a")).isInstanceOf(Answer.Wait.class);
  }

  @Test
  void shouldRefuseTheOldPasswordAtOnceEvenIfItWasJustProven() {
    signIn.attempt("nurse", RIGHT, "a");
    accounts.changePassword("nurse", "another password");

    assertThat(signIn.attempt("nurse", RIGHT, "a")).isEqualTo(new Answer.Refused());
    assertThat(signIn.attempt("nurse", "another password", "a")).isInstanceOf(Answer.Welcome.class);
  }

  @Test
  void shouldLetAProvenProgramInWhileSomebodyElseGuessesItsPassword() {
    signIn.attempt("nurse", RIGHT, "a");
    fail("nurse", "a", 5);

    assertThat(signIn.attempt("nurse", RIGHT, "a")).isInstanceOf(Answer.Welcome.class);
  }

  @Test
  void shouldKeepAccountsWithoutTheirPasswords() {
    accounts.put(account("admin", "admin", "*"), "first password");
    accounts.update(account("nurse", "charge", "W2"));

    assertThat(accounts.list())
        .containsExactly(account("admin", "admin", "*"), account("nurse", "charge", "W2"));
    assertThat(accounts.kept("nurse").orElseThrow().hash()).startsWith("$2").doesNotContain(RIGHT);
    assertThat(accounts.isEmpty()).isFalse();
    assertThat(accounts.delete("nurse")).isTrue();
    assertThat(accounts.delete("nurse")).isFalse();
    assertThat(accounts.find("nurse")).isEmpty();
  }

  @Test
  void shouldRefuseToCutALongPassword() {
    var longest = "x".repeat(72);
    accounts.changePassword("nurse", longest);

    assertThat(signIn.attempt("nurse", longest + "y", "a")).isEqualTo(new Answer.Refused());
    assertThatThrownBy(() -> accounts.changePassword("nurse", longest + "y"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("73");
  }

  private void fail(String name, String address, int times) {
    for (int i = 0; i < times; i++) {
      signIn.attempt(name, "guess " + i, address);
    }
  }

  private static Account account(String name, String role, String ward) {
    return new Account(name, "A " + name, Set.of(role), Set.of(ward));
  }

  private static final class MovedClock extends Clock {
    private Instant now = Instant.parse("2026-01-05T03:00:00Z");

    void forward(Duration by) {
      now = now.plus(by);
    }

    @Override
    public Instant instant() {
      return now;
    }

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      throw new UnsupportedOperationException();
    }
  }
}
