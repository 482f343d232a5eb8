package org.driftward.dashboard.core;

import java.util.Comparator;

/** Orders bed names as a person counts: runs of digits by their number, the rest by letter. */
public final class BedOrder implements Comparator<String> {

  public static final BedOrder INSTANCE = new BedOrder();

  private BedOrder() {}

  @Override
  public int compare(String a, String b) {
    int i = 0;
    int j = 0;
    while (i < a.length() && j < b.length()) {
      int order;
      if (isDigit(a.charAt(i)) && isDigit(b.charAt(j))) {
        int endA = endOfDigits(a, i);
        int endB = endOfDigits(b, j);
        order = compareNumbers(a.substring(i, endA), b.substring(j, endB));
        i = endA;
        j = endB;
      } else {
        order = Character.compare(a.charAt(i++), b.charAt(j++));
      }
      if (order != 0) {
        return order;
      }
    }
    int rest = Integer.compare(a.length() - i, b.length() - j);
    return rest != 0 ? rest : a.compareTo(b);
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  private static int endOfDigits(String text, int from) {
    int end = from;
    while (end < text.length() && isDigit(text.charAt(end))) {
      end++;
    }
    return end;
  }

  /** Digits of any length, leading zeros aside. */
  private static int compareNumbers(String a, String b) {
    var x = a.replaceFirst("^0+(?=.)", "");
    var y = b.replaceFirst("^0+(?=.)", "");
    int length = Integer.compare(x.length(), y.length());
    return length != 0 ? length : x.compareTo(y);
  }
}
