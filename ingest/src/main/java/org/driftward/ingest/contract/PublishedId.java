package org.driftward.ingest.contract;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * The name of a finding or a score of one assessment, where other systems read it: short, of plain
 * characters, and the same in every process, so that whoever sends can say under which name it will
 * be read. It tells nothing about the patient, and is no secret.
 */
public final class PublishedId {

  private static final Pattern SHAPE = Pattern.compile("[fs]-([0-9a-f]{32})-[0-9a-f]{12}");

  private PublishedId() {}

  /** Both pressures of one assessment are published together, under one name. */
  public static String finding(String encounter, String assessment, FindingKey key) {
    var code = key.code().equals("diastolic-pressure") ? "systolic-pressure" : key.code();
    var side = key.side() == null ? "" : key.side().word();
    var site = key.site() == null ? "" : key.site();
    return name('f', encounter, assessment, code + "|" + site + "|" + side);
  }

  public static String score(String encounter, String assessment, String score) {
    return name('s', encounter, assessment, score);
  }

  /** Names an assessment of an encounter: 32 hexadecimal digits, MD5 of both and a line feed. */
  public static String moment(String encounter, String assessment) {
    return digest(encounter + "\n" + assessment);
  }

  /** The {@link #moment} that a name belongs to; empty if it is no such name. */
  public static Optional<String> momentOf(String id) {
    var matcher = SHAPE.matcher(id);
    return matcher.matches() ? Optional.of(matcher.group(1)) : Optional.empty();
  }

  private static String name(char kind, String encounter, String assessment, String what) {
    return kind + "-" + moment(encounter, assessment) + "-" + digest(what).substring(0, 12);
  }

  private static String digest(String text) {
    try {
      var hash = MessageDigest.getInstance("MD5").digest(text.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(hash);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("MD5 is part of every Java platform", e);
    }
  }
}
