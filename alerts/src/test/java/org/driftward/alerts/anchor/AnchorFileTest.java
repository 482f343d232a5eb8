package org.driftward.alerts.anchor;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import org.driftward.alerts.contract.AnchorSigner;
import org.driftward.alerts.contract.AnchorVerifier;
import org.driftward.alerts.contract.Journal.Anchor;
import org.driftward.alerts.contract.JournalChain;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AnchorFileTest {

  private static final Instant NOW = Instant.parse("2026-01-05T03:00:00Z");

  @TempDir Path folder;

  @Test
  void shouldChainAnchorsOverARestartAndKeepEachEndOnce() {
    var path = folder.resolve("made").resolve("anchors.ndjson");
    var first = JournalChain.next(0, JournalChain.START, NOW, "a", "b", "c", "{}");
    var second = JournalChain.next(1, first.hash(), NOW, "a", "b", "c", "{}");

    assertThat(new AnchorFile(path, null).append(first, NOW)).isPresent();
    assertThat(new AnchorFile(path, null).append(first, NOW)).isEmpty();
    assertThat(new AnchorFile(path, null).append(second, NOW)).isPresent();

    var anchors = new AnchorFile(path, null).read();
    assertThat(anchors).extracting(Anchor::sequence).containsExactly(1L, 2L);
    var check = JournalChain.check(anchors);
    check.take(first);
    check.take(second);
    assertThat(check.finish().sound()).isTrue();
  }

  @Test
  void shouldSignFromTheTimeOnThatItHasAKey() {
    var path = folder.resolve("anchors.ndjson");
    var key = AnchorSigner.newKey();
    var first = JournalChain.next(0, JournalChain.START, NOW, "a", "b", "c", "{}");
    var second = JournalChain.next(1, first.hash(), NOW, "a", "b", "c", "{}");
    new AnchorFile(path, null).append(first, NOW);

    var file = new AnchorFile(path, AnchorSigner.read(key));
    file.append(second, NOW);

    assertThat(file.read())
        .extracting(anchor -> anchor.signature() != null)
        .containsExactly(false, true);
    var check = JournalChain.check(file.read(), AnchorVerifier.read(key));
    check.take(first);
    check.take(second);
    assertThat(check.finish().sound()).isTrue();
  }

  @Test
  void shouldGoOnWhereAPowerCutToreALine() throws IOException {
    var path = folder.resolve("anchors.ndjson");
    var first = JournalChain.next(0, JournalChain.START, NOW, "a", "b", "c", "{}");
    var second = JournalChain.next(1, first.hash(), NOW, "a", "b", "c", "{}");
    new AnchorFile(path, null).append(first, NOW);
    Files.writeString(path, "{\"sequence\":2,\"he", StandardOpenOption.APPEND);

    assertThat(new AnchorFile(path, null).append(second, NOW)).isPresent();

    assertThat(new AnchorFile(path, null).read())
        .extracting(Anchor::sequence)
        .containsExactly(1L, 2L);
  }
}
