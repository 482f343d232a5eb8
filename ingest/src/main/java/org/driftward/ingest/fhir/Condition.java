package org.driftward.ingest.fhir;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.driftward.ingest.core.Rule;
import org.hl7.fhir.r4.model.Identifier;
import org.jspecify.annotations.Nullable;

/**
 * Create only what does not exist yet: {@code If-None-Exist}, or {@code ifNoneExist} of an entry.
 *
 * <p>The only criterion is {@code identifier=system|value}, and it must name the resource that it
 * stands beside. Then it can be kept without asking anybody: the identifier decides which
 * assessment it is, and a conditional one is the lowest revision, which replaces nothing.
 */
final class Condition {

  private static final String PARAMETER = "identifier=";

  private Condition() {}

  /**
   * Whether the criterion can be kept; a fault in {@code into} if not.
   *
   * @param own the identifier that decides which resource it is
   */
  static boolean holds(String criterion, Optional<Identifier> own, String pointer, Converted into) {
    var token = token(criterion);
    boolean holds = token != null && own.isPresent() && matches(token, own.get());
    if (!holds) {
      into.fault(
          pointer,
          Rule.UNUSABLE_CONDITION,
          "If-None-Exist must be identifier=system|value and name this resource's first identifier");
    }
    return holds;
  }

  static Optional<Identifier> deciding(List<Identifier> identifiers) {
    return identifiers.stream().filter(Identifier::hasValue).findFirst();
  }

  private static boolean matches(String token, Identifier own) {
    int bar = token.indexOf('|');
    if (bar < 0) {
      return token.equals(own.getValue());
    }
    var system = own.getSystem() == null ? "" : own.getSystem();
    return token.substring(0, bar).equals(system)
        && token.substring(bar + 1).equals(own.getValue());
  }

  /** The value of the one parameter; null if there is another, or more than one. */
  private static @Nullable String token(String criterion) {
    var query = criterion.substring(criterion.indexOf('?') + 1);
    if (!query.startsWith(PARAMETER) || query.indexOf('&') >= 0) {
      return null;
    }
    try {
      return URLDecoder.decode(query.substring(PARAMETER.length()), StandardCharsets.UTF_8);
    } catch (IllegalArgumentException e) {
      return null;
    }
  }
}
