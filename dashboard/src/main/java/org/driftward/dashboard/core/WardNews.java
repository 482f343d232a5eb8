package org.driftward.dashboard.core;

/** Tells that a ward changed, wherever in the cluster the change was made. Thread-safe. */
public interface WardNews {

  /**
   * @param changed called after each change has become visible, from a thread that must not be
   *     blocked; changes may be joined, none is left out
   */
  Listening listen(String ward, Runnable changed);

  /** Until closed. */
  interface Listening extends AutoCloseable {
    @Override
    void close();
  }
}
