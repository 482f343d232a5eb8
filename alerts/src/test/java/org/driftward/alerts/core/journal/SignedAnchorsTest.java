package org.driftward.alerts.core.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.driftward.alerts.contract.AnchorSigner;
import org.driftward.alerts.contract.AnchorVerifier;
import org.driftward.alerts.contract.Journal.Anchor;
import org.driftward.alerts.contract.Journal.Entry;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Whoever has the database and the file of the anchors, but not the key. */
class SignedAnchorsTest {

  private static final Instant NOW = Instant.parse("2026-01-05T03:00:00Z");
  private static final HexFormat HEX = HexFormat.of();

  /** In front of the 32 bytes of a private and of a public key: RFC 8410, sections 7 and 4. */
  private static final String PKCS8 = "302e020100300506032b657004220420";

  private static final String X509 = "302a300506032b6570032100";

  private final String key = AnchorSigner.newKey();
  private final AnchorSigner signer = AnchorSigner.read(key);
  private final AnchorVerifier verifier = AnchorVerifier.read(signer.publicKey());

  /** RFC 8032, section 7.1, tests 1 and 2: key, public key, message, signature. */
  @ParameterizedTest
  @CsvSource({
    "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60,"
        + "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a,'',"
        + "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b",
    "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb,"
        + "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c,72,"
        + "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00"
  })
  void shouldSignAsTheStandardDoes(String own, String shown, String message, String signature) {
    var privateKey = Ed25519.privateKey(HEX.parseHex(PKCS8 + own));
    var publicKey = Ed25519.publicKey(HEX.parseHex(X509 + shown));

    var signed = Ed25519.sign(privateKey, HEX.parseHex(message));

    assertThat(HEX.formatHex(signed)).isEqualTo(signature);
    assertThat(Ed25519.holds(publicKey, HEX.parseHex(message), signed)).isTrue();
    assertThat(Ed25519.holds(publicKey, HEX.parseHex(message + "00"), signed)).isFalse();
  }

  @Test
  void shouldFindTheAnchorsSoundThatTheKeySigned() {
    assertThat(fault(journal("as it was"), signed(journal("as it was")))).isNull();
  }

  @Test
  void shouldFindAJournalWrittenAnewTogetherWithItsAnchors() {
    var forged = journal("after the fact");
    var anchors = anchors(forged);

    var check = new ChainCheck(anchors);
    forged.forEach(check::take);
    assertThat(check.finish().sound()).as("chained alone it looks sound").isTrue();
    assertThat(fault(forged, anchors)).isEqualTo("no anchor is signed");
  }

  @Test
  void shouldFindAnAnchorOfAnotherKey() {
    var forged = journal("after the fact");
    var other = AnchorSigner.read(AnchorSigner.newKey());

    assertThat(fault(forged, anchors(forged).stream().map(other::sign).toList()))
        .isEqualTo("anchor 1 was not signed by this key");
  }

  @Test
  void shouldFindASignatureThatWasMoved() {
    var anchors = new ArrayList<>(signed(journal("as it was")));
    anchors.set(1, anchors.get(1).signed(String.valueOf(anchors.get(0).signature())));

    assertThat(fault(journal("as it was"), anchors))
        .isEqualTo("anchor 2 was not signed by this key");
    anchors.set(1, anchors.get(1).signed("!"));
    assertThat(fault(journal("as it was"), anchors))
        .isEqualTo("anchor 2 was not signed by this key");
  }

  @Test
  void shouldLetTheFirstSignatureVouchForOlderAnchorsAndNoneFollowWithout() {
    var entries = journal("as it was");
    var bare = anchors(entries);

    assertThat(fault(entries, List.of(bare.get(0), signer.sign(bare.get(1))))).isNull();
    assertThat(fault(entries, List.of(signer.sign(bare.get(0)), bare.get(1))))
        .isEqualTo("anchor 2 is not signed, although one before it is");
  }

  @Test
  void shouldRefuseHalvesOfTwoKeysAndWhatIsNoKey() {
    var other = AnchorSigner.read(AnchorSigner.newKey()).publicKey();
    var ownHalf = key.substring(0, key.indexOf("-----BEGIN PUBLIC KEY-----"));

    assertThatThrownBy(() -> AnchorSigner.read(ownHalf + other))
        .hasMessage("the two halves are not one key's");
    assertThatThrownBy(() -> AnchorSigner.read(ownHalf)).hasMessage("no block \"PUBLIC KEY\"");
    assertThat(signer.toString()).doesNotContain("KEY");
  }

  private @Nullable String fault(List<Entry> entries, List<Anchor> anchors) {
    var check = new ChainCheck(anchors, verifier);
    entries.forEach(check::take);
    return check.finish().fault();
  }

  private List<Anchor> signed(List<Entry> entries) {
    return anchors(entries).stream().map(signer::sign).toList();
  }

  private static List<Anchor> anchors(List<Entry> entries) {
    var first = Anchors.next(null, entries.get(0), NOW);
    return List.of(first, Anchors.next(first, entries.get(1), NOW));
  }

  private static List<Entry> journal(String body) {
    var first = Chain.START.next(new Line("episode/E-1", "opened", "driftward", body), NOW);
    var line = new Line("episode/E-1", "closed", "driftward", body);
    return List.of(first, Chain.START.after(first).next(line, NOW));
  }
}
