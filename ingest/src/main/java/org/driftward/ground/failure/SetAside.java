package org.driftward.ground.failure;

import java.time.Duration;
import java.util.Objects;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * An item that cannot be worked: where it lies, whom it is about, and what follows for them.
 *
 * @param place unique: topic/partition/offset, or table/key
 * @param part that could not work it
 * @param subject whom it is about, or null where that is not known
 * @param area whose pages say so besides those about the subject, or null
 * @param means what follows for whoever reads those pages, a sentence
 * @param where for the log: the place without anything that names a subject
 * @param again after what time it is tried again, or null for never
 * @param told how long pages speak of it; what still fails is said again
 */
public record SetAside(
    String place,
    String part,
    @Nullable String subject,
    @Nullable String area,
    String means,
    String where,
    @Nullable Duration again,
    Duration told) {

  private static final Pattern NOT_STORABLE = Pattern.compile("[\\p{Cntrl}\\p{Cs}]");
  private static final int LONGEST = 500;
  private static final Duration A_MINUTE = Duration.ofMinutes(1);
  private static final Duration UNTIL_SAID_AGAIN = Duration.ofMinutes(3);
  private static final Duration AN_HOUR = Duration.ofHours(1);

  public SetAside {
    place = storable(place);
    subject = subject == null ? null : storable(subject);
    area = area == null ? null : storable(area);
    Objects.requireNonNull(part, "part");
    Objects.requireNonNull(means, "means");
    Objects.requireNonNull(where, "where");
    Objects.requireNonNull(told, "told");
  }

  /** Something that stays where it is and may be mended there. It is tried again each minute. */
  public static SetAside row(
      String table,
      String key,
      String part,
      @Nullable String subject,
      @Nullable String area,
      String means) {
    return new SetAside(
        table + "/" + key, part, subject, area, means, table, A_MINUTE, UNTIL_SAID_AGAIN);
  }

  /** A record of a log, which never changes. */
  public static SetAside ofLog(
      String topic,
      int partition,
      long offset,
      String part,
      @Nullable String subject,
      String means) {
    var place = topic + "/" + partition + "/" + offset;
    return new SetAside(place, part, subject, null, means, place, null, AN_HOUR);
  }

  /** A bad item may be named by what PostgreSQL does not keep, and must be kept all the same. */
  private static String storable(String name) {
    var plain = NOT_STORABLE.matcher(name).replaceAll("?");
    return plain.length() <= LONGEST ? plain : plain.substring(0, LONGEST);
  }

  public SetAside toldFor(Duration time) {
    return new SetAside(place, part, subject, area, means, where, again, time);
  }

  /** Where, and never about whom. */
  @Override
  public String toString() {
    return "SetAside[" + part + " " + where + "]";
  }
}
