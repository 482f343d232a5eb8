package org.driftward.scoring.contract;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Units as people read them, from UCUM codes. */
public final class PlainUnit {

  private static final Map<String, String> PLAIN =
      Map.of("mm[Hg]", "mmHg", "Cel", "°C", "{score}", "");

  private PlainUnit() {}

  /** The unit with a space before it, to stand after a number; empty where there is none. */
  public static String after(@Nullable String ucum) {
    var plain = ucum == null ? "" : PLAIN.getOrDefault(ucum, ucum);
    return plain.isEmpty() ? "" : " " + plain;
  }
}
