package org.driftward.ingest.fhir;

import java.math.BigDecimal;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.ingest.json.JsonTree;
import org.driftward.ingest.json.JsonTree.NotJsonException;
import org.jspecify.annotations.Nullable;

/**
 * What JSON must be before the FHIR parser sees it. That parser writes every number out digit by
 * digit: {@code 1e999999} costs it most of a minute and {@code 1e999999999} all memory
 * (FhirFuzzTest found it). And of two fields of one name it takes one in silence.
 */
final class PlainJson {

  private PlainJson() {}

  /**
   * @throws IllegalArgumentException saying what is wrong; never with a value
   */
  static void check(byte[] body) {
    try {
      check(JsonTree.parse(body));
    } catch (NotJsonException e) {
      throw new IllegalArgumentException(e.getMessage(), e);
    }
  }

  private static void check(@Nullable Object node) {
    Collection<?> children =
        node instanceof Map<?, ?> object
            ? object.values()
            : node instanceof List<?> list ? list : List.of();
    if (node instanceof BigDecimal number && !Quantity.fits(number)) {
      throw new IllegalArgumentException("a number has more digits than any measurement");
    }
    children.forEach(PlainJson::check);
  }
}
