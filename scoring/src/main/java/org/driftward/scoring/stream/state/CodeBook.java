package org.driftward.scoring.stream.state;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.HashMap;
import java.util.Map;
import java.util.zip.CRC32;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.Side;

/**
 * Writes which finding a value is of in five bytes. A code of the catalogue is its CRC-32, which
 * does not depend on the order of the catalogue or on what is added to it; any other code is
 * written out. Immutable.
 */
final class CodeBook {

  private static final int BY_NAME = 1;
  private static final int WITH_SITE = 2;
  private static final int LEFT = 4;
  private static final int RIGHT = 8;

  private final Map<Integer, FindingKey> byNumber = new HashMap<>();

  CodeBook(Catalogue catalogue) {
    for (var entry : catalogue.entries()) {
      // Of two codes with one number the later ones are written out.
      byNumber.putIfAbsent(number(entry.code()), FindingKey.of(entry.code()));
    }
  }

  void write(FindingKey key, ByteWriter out) {
    int number = number(key.code());
    var known = byNumber.get(number);
    boolean byName = known == null || !known.code().equals(key.code());
    out.octet(
        (byName ? BY_NAME : 0)
            | (key.site() == null ? 0 : WITH_SITE)
            | (key.side() == Side.LEFT ? LEFT : 0)
            | (key.side() == Side.RIGHT ? RIGHT : 0));
    if (byName) {
      out.text(key.code());
    } else {
      out.fixed(number);
    }
    if (key.site() != null) {
      out.text(key.site());
    }
  }

  FindingKey read(ByteReader in) {
    int flags = in.octet();
    var plain = (flags & BY_NAME) != 0 ? FindingKey.of(in.text()) : named(in.fixedInt());
    var site = (flags & WITH_SITE) != 0 ? in.text() : null;
    var side = (flags & LEFT) != 0 ? Side.LEFT : (flags & RIGHT) != 0 ? Side.RIGHT : null;
    return site == null && side == null ? plain : new FindingKey(plain.code(), site, side);
  }

  /** A code that has left the catalogue since keeps its number for a name, and is not scored. */
  private FindingKey named(int number) {
    var key = byNumber.get(number);
    return key == null ? FindingKey.of("former-" + Integer.toHexString(number)) : key;
  }

  private static int number(String code) {
    var crc = new CRC32();
    crc.update(code.getBytes(UTF_8));
    return (int) crc.getValue();
  }
}
