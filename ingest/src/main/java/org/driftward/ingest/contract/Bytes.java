package org.driftward.ingest.contract;

import java.util.Arrays;

/** Bytes that nobody changes. Equal when they are the same bytes; thread-safe. */
public final class Bytes {

  private final byte[] content;

  private Bytes(byte[] content) {
    this.content = content;
  }

  public static Bytes of(byte[] content) {
    return new Bytes(content.clone());
  }

  /** A part of an array, the end left out. */
  public static Bytes of(byte[] content, int from, int to) {
    return new Bytes(Arrays.copyOfRange(content, from, to));
  }

  public byte[] array() {
    return content.clone();
  }

  public int length() {
    return content.length;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Bytes bytes && Arrays.equals(content, bytes.content);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(content);
  }

  /** How many, never which. */
  @Override
  public String toString() {
    return "Bytes[" + content.length + "]";
  }
}
