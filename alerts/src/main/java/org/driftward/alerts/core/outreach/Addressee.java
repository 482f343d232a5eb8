package org.driftward.alerts.core.outreach;

import java.util.Objects;

/**
 * Somebody, or something, that can be told by one channel.
 *
 * @param name as people know it
 * @param address of mail, or a {@link PagerAddress} as text
 */
public record Addressee(String name, String address) {

  public Addressee {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(address, "address");
  }

  /** No address. */
  @Override
  public String toString() {
    return "Addressee";
  }
}
