package org.driftward.ingest.hl7.mllp;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.driftward.ingest.hl7.Text;

/**
 * Good messages with one to four things done to them that happen to messages: segments lost,
 * doubled, shuffled; fields, components and repetitions changed, doubled, emptied; separators
 * changed; times and numbers out of any range; bytes flipped, cut off, put in.
 */
final class Mutations {

  private static final String AT = "20260105115000+0000";

  private final List<String> good;
  private final Random random;

  /**
   * @param stay an encounter that is known, of patient {@code P-<stay>}
   */
  Mutations(Random random, String stay) {
    this.random = random;
    this.good = good(stay);
  }

  private static List<String> good(String stay) {
    return List.of(
        Text.results("M-1", stay, Text.heartRate("88")),
        Text.results(
            "M-2",
            stay,
            Text.obx("NM", "8310-5^^LN", "98.6", "degF", "F", AT),
            Text.obx("SN", "8480-6^^LN", "^120", "mm[Hg]", "C", AT),
            Text.obx("CWE", "67775-7^^LN", "C^Confused^L", "", "F", AT)),
        Text.results(
            "M-3",
            stay,
            Text.obx("NM", "pulse-amplitude^^99DRIFTWARD", "1", "", "F", AT)
                + "||||||dorsalis-pedis^^99DRIFTWARD~left^^99DRIFTWARD"),
        adt("A01", stay),
        adt("A02", stay),
        adt("A08", stay),
        adt("A12", stay),
        Text.message(
            Text.msh("ADT^A40^ADT_A39", "M-5"),
            Text.evn("20260105110000+0000"),
            Text.pid("P-2"),
            "MRG|P-3^^^HOUSE^MR||||V-3"));
  }

  private static final List<String> ODD =
      List.of(
          "",
          "\"\"",
          "^^^",
          "~~~",
          "&&&",
          "|||",
          "\\H\\",
          "\\X00\\",
          "\\Zbroken",
          "-1",
          "1e999",
          "99999999999999999999999999999",
          "20269999999999",
          "0000",
          "20260105115000+9999",
          "NaN",
          "💧",
          "é",
          "\u0000",
          "\u0085",
          "OBX",
          "MSH",
          "A".repeat(300),
          "W",
          "C",
          "D",
          "X",
          "kPa",
          "furlong",
          "V-1",
          "V-2",
          "P-V-1",
          "<5",
          "2.3",
          "A11",
          "R01",
          "ORU",
          "^~\\&#");

  private static String adt(String event, String stay) {
    return Text.message(
        Text.msh("ADT^" + event, "M-4"),
        Text.evn("20260105090000+0000"),
        Text.pid("P-" + stay),
        Text.pv1("ALDER^3^B", stay, "20260105080000+0000", ""));
  }

  /** Never with a byte that frames. */
  byte[] next() {
    var segments = new ArrayList<>(Arrays.asList(pick(good).split("\r")));
    int times = random.nextInt(5);
    for (int i = 0; i < times; i++) {
      segment(segments);
    }
    var bytes = (String.join("\r", segments) + "\r").getBytes(StandardCharsets.UTF_8);
    var mutated = random.nextInt(4) == 0 ? bytes(bytes) : bytes;
    for (int i = 0; i < mutated.length; i++) {
      if (mutated[i] == 0x0B || mutated[i] == 0x1C) {
        mutated[i] = '?';
      }
    }
    return mutated;
  }

  private void segment(List<String> segments) {
    if (segments.isEmpty()) {
      segments.add(pick(ODD));
      return;
    }
    int at = random.nextInt(segments.size());
    switch (random.nextInt(6)) {
      case 0 -> segments.remove(at);
      case 1 -> segments.add(random.nextInt(segments.size() + 1), segments.get(at));
      case 2 -> segments.add(at, pick(ODD));
      default -> segments.set(at, field(segments.get(at)));
    }
  }

  private String field(String segment) {
    var fields = segment.split("\\|", -1);
    int at = random.nextInt(fields.length);
    switch (random.nextInt(6)) {
      case 0 -> fields[at] = pick(ODD);
      case 1 -> fields[at] = fields[at] + pick(ODD);
      case 2 -> fields[at] = fields[at] + "~" + fields[at];
      case 3 -> fields[at] = fields[at].replace('^', pick(List.of("~", "&", "|", "^^")).charAt(0));
      case 4 -> fields[at] = pick(ODD) + "^" + fields[at];
      default -> fields[at] = fields[random.nextInt(fields.length)];
    }
    return String.join("|", fields);
  }

  private byte[] bytes(byte[] whole) {
    int at = random.nextInt(whole.length);
    return switch (random.nextInt(3)) {
      case 0 -> Arrays.copyOf(whole, Math.max(1, at));
      case 1 -> {
        var flipped = whole.clone();
        flipped[at] ^= (byte) (1 << random.nextInt(8));
        yield flipped;
      }
      default -> {
        var more = Arrays.copyOf(whole, whole.length + 1);
        System.arraycopy(whole, at, more, at + 1, whole.length - at);
        more[at] = (byte) random.nextInt(256);
        yield more;
      }
    };
  }

  private <T> T pick(List<T> from) {
    return from.get(random.nextInt(from.size()));
  }
}
