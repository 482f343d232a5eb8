package org.driftward.ground.failure;

import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Consumer;

/** Works items so that a bad one stops no other. Stateless. */
public final class Isolation {

  private Isolation() {}

  /**
   * All at once, as long as that goes well; one by one where it does not.
   *
   * @param work takes any number of items, all or none of them, and the same item twice unharmed
   * @param setAside keeps an item that cannot be worked, with the failure
   * @throws RuntimeException if the failure lies in no item; then some items may have been worked
   */
  public static <T> void together(
      List<T> items, Consumer<List<T>> work, BiConsumer<T, Throwable> setAside) {
    if (items.isEmpty()) {
      return;
    }
    try {
      work.accept(items);
    } catch (RuntimeException | StackOverflowError e) {
      if (!Failures.isOfTheItem(e)) {
        throw e;
      }
      apart(items, item -> work.accept(List.of(item)), setAside);
    }
  }

  /** Each by itself. See {@link #together}. */
  public static <T> void apart(
      Iterable<T> items, Consumer<T> work, BiConsumer<T, Throwable> setAside) {
    for (var item : items) {
      try {
        work.accept(item);
      } catch (RuntimeException | StackOverflowError e) {
        if (!Failures.isOfTheItem(e)) {
          throw e;
        }
        setAside.accept(item, e);
      }
    }
  }
}
