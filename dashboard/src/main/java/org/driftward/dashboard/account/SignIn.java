package org.driftward.dashboard.account;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.atomic.AtomicReference;
import org.driftward.dashboard.config.DashboardConfig;
import org.driftward.dashboard.contract.Accounts.Account;
import org.driftward.ground.store.Database;

/**
 * Decides whether a name and a password let somebody in.
 *
 * <p>Failures are counted twice. By account and address: the waits double, so guessing from one
 * place soon stops. By account from anywhere: the wait stays short, so that guessing from many
 * places is slowed but nobody can keep a nurse out of the ward's board. An address alone is never
 * locked: a whole hospital may share one. Unknown names are counted and cost as much as known ones.
 *
 * <p>Goes by the clock of the ward, so the waits are shorter where a demo runs faster than the wall
 * clock. Thread-safe, blocking, slow on purpose.
 */
@ApplicationScoped
public class SignIn {

  /** What became of an attempt. */
  public sealed interface Answer {
    record Welcome(Account account) implements Answer {}

    /** No such account or another password; it does not say which. */
    record Refused() implements Answer {}

    /** Nothing was tried. */
    record Wait(Instant until) implements Answer {}
  }

  private final StoredAccounts accounts;
  private final FailureStore failures;
  private final RecentProofs proofs;
  private final Patience here;
  private final Patience anywhere;
  private final Clock clock;
  private final AtomicReference<Instant> swept = new AtomicReference<>(Instant.EPOCH);

  public SignIn(StoredAccounts accounts, Database database, DashboardConfig config, Clock clock) {
    var rules = config.signIn();
    this.accounts = accounts;
    this.failures = new FailureStore(database);
    this.proofs = new RecentProofs(rules.remember());
    this.here =
        new Patience(rules.failures(), rules.firstWait(), rules.longestWait(), rules.forget());
    this.anywhere =
        new Patience(
            rules.failuresAnywhere(), rules.firstWait(), rules.firstWait(), rules.forget());
    this.clock = clock;
  }

  /**
   * @param address where the attempt comes from, as the server sees it
   */
  public Answer attempt(String name, String password, String address) {
    var now = clock.instant();
    var kept = accounts.kept(name);
    if (kept.isPresent() && proofs.know(name, password, kept.get().hash(), now)) {
      return new Answer.Welcome(kept.get().account());
    }
    var subjectHere = "from " + address + " as " + name;
    var subjectAnywhere = "as " + name;
    for (String subject : new String[] {subjectHere, subjectAnywhere}) {
      var known = failures.find(subject);
      if (known.locked(now)) {
        return new Answer.Wait(known.lockedUntil());
      }
    }
    if (!accounts.match(password, kept)) {
      failures.failed(subjectHere, here, now);
      failures.failed(subjectAnywhere, anywhere, now);
      sweep(now);
      return new Answer.Refused();
    }
    failures.forget(subjectHere);
    failures.forget(subjectAnywhere);
    proofs.remember(name, password, kept.orElseThrow().hash(), now);
    return new Answer.Welcome(kept.orElseThrow().account());
  }

  /** Now and then removes what no longer counts, so that guessed names do not pile up. */
  private void sweep(Instant now) {
    var last = swept.get();
    if (now.isAfter(last.plus(Duration.ofMinutes(1))) && swept.compareAndSet(last, now)) {
      failures.forgetBefore(now.minus(here.forget()));
    }
  }
}
