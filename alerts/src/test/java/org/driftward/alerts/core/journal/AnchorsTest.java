package org.driftward.alerts.core.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.driftward.alerts.contract.Journal.Anchor;
import org.driftward.alerts.contract.Journal.Entry;
import org.driftward.alerts.contract.Journal.Verdict;
import org.junit.jupiter.api.Test;

/** What anchors kept elsewhere, and an exported copy in its own order, bring to light. */
class AnchorsTest {

  private static final Instant NOW = Instant.parse("2026-01-05T03:00:00Z");

  private final List<Entry> entries = chain("a", "b", "c", "d", "e", "f");
  private final List<Anchor> anchors = anchors(entries, 2, 4, 6);

  @Test
  void shouldFindAJournalSoundThatMeetsItsAnchors() {
    assertThat(check(entries, anchors)).isEqualTo(new Verdict(6, null, null, hash(5)));
  }

  @Test
  void shouldFindAChainThatItsOwnerWroteAnew() {
    var forged = chain("a", "b", "forged", "d", "e", "f");

    assertThat(check(forged, List.of()).sound()).isTrue();
    var verdict = check(forged, anchors);
    assertThat(verdict.at()).isEqualTo(3);
    assertThat(verdict.fault())
        .isEqualTo(
            "the chain was written anew: an entry from 3 to 4 is not the one anchored at"
                + " 2026-01-05T03:00:00Z");
  }

  @Test
  void shouldFindAnEndThatWasCutOffTogetherWithItsHead() {
    assertThat(check(entries.subList(0, 5), List.of()).sound()).isTrue();
    assertThat(check(entries.subList(0, 5), anchors).fault())
        .isEqualTo("entry 6 is missing at the end: an anchor knows it");
  }

  @Test
  void shouldTellAMovedEntryFromARemovedOne() {
    var moved = new ArrayList<>(entries);
    moved.add(4, moved.remove(2));
    var removed = new ArrayList<>(entries);
    removed.remove(2);

    assertThat(check(moved, anchors).fault())
        .isEqualTo("entry 3 was moved: it stands further down");
    assertThat(check(removed, anchors).fault()).isEqualTo("entry 3 is missing");
  }

  @Test
  void shouldFindATwiceInsertedEntry() {
    var twice = new ArrayList<>(entries);
    twice.add(3, twice.get(2));

    assertThat(check(twice, anchors).fault()).isEqualTo("entry 3 stands there more than once");
  }

  @Test
  void shouldFindAnAnchorThatWasAlteredOrTakenAway() {
    var altered = new ArrayList<>(anchors);
    var third = altered.get(2);
    altered.set(2, new Anchor(6, hash(4), third.at(), third.previous(), third.seal(), null));

    assertThat(check(entries, altered).fault())
        .isEqualTo("anchor 3 was altered: its seal is not its content's");
    assertThat(check(entries, List.of(anchors.get(0), anchors.get(2))).fault())
        .isEqualTo("anchor 2 does not follow the one before");
  }

  private static Verdict check(List<Entry> entries, List<Anchor> anchors) {
    var check = new ChainCheck(anchors);
    entries.forEach(check::take);
    return check.finish();
  }

  private String hash(int index) {
    return entries.get(index).hash();
  }

  private static List<Entry> chain(String... bodies) {
    var entries = new ArrayList<Entry>();
    var chain = Chain.START;
    for (var body : bodies) {
      var entry = chain.next(new Line("episode/E-1", "opened", "driftward", body), NOW);
      entries.add(entry);
      chain = chain.after(entry);
    }
    return entries;
  }

  private static List<Anchor> anchors(List<Entry> entries, int... sequences) {
    var anchors = new ArrayList<Anchor>();
    for (int sequence : sequences) {
      var before = anchors.isEmpty() ? null : anchors.get(anchors.size() - 1);
      anchors.add(Anchors.next(before, entries.get(sequence - 1), NOW));
    }
    return anchors;
  }
}
