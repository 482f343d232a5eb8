package org.driftward.dashboard.web;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.time.Instant;
import java.util.function.Function;
import java.util.function.Supplier;
import org.driftward.dashboard.core.AccessBook;
import org.driftward.dashboard.core.PatientHistory;
import org.driftward.dashboard.core.PatientView;
import org.driftward.dashboard.core.StayRecord;
import org.driftward.dashboard.core.WardReader;

/**
 * The one way by which a page or a call gets at a patient: asks whether the viewer may, keeps that
 * they looked, and only then shows. Blocking.
 */
@ApplicationScoped
public class Patients {

  private static final Duration AHEAD = Duration.ofHours(1);

  /** What became of the wish to see a patient. */
  public sealed interface Sight<T> {
    record Shown<T>(T view) implements Sight<T> {}

    /** On a ward that is not the viewer's. */
    record OtherWard<T>() implements Sight<T> {}

    record Unknown<T>() implements Sight<T> {}
  }

  private final WardReader reader;
  private final AccessBook book;

  public Patients(WardReader reader, AccessBook book) {
    this.reader = reader;
    this.book = book;
  }

  /**
   * Anything else about a patient.
   *
   * @param what is shown, as {@link AccessBook} keeps it
   */
  public <T> Sight<T> about(String encounter, String what, Viewer viewer, Supplier<T> read) {
    return shown(encounter, viewer, what, view -> read.get());
  }

  public Sight<PatientView> patient(String encounter, Viewer viewer) {
    return shown(encounter, viewer, "patient", view -> view);
  }

  /**
   * @param from inclusive
   * @param to exclusive
   */
  public Sight<PatientHistory> history(String encounter, Instant from, Instant to, Viewer viewer) {
    return shown(encounter, viewer, "history", view -> reader.history(encounter, from, to));
  }

  /** The patient with the whole record of the stay, for somebody who adds to it. */
  public Sight<StayRecord> record(String encounter, Viewer viewer) {
    return shown(encounter, viewer, "assess", this::record);
  }

  /** The same for what belongs to a page that was asked for, and so was kept as a look, before. */
  public Sight<StayRecord> recordAgain(String encounter, Viewer viewer) {
    var view = reader.patient(encounter);
    if (view.isEmpty()) {
      return new Sight.Unknown<>();
    }
    return viewer.sees(view.get().encounter().ward())
        ? new Sight.Shown<>(record(view.get()))
        : new Sight.OtherWard<>();
  }

  private StayRecord record(PatientView view) {
    // A clock somewhere may be ahead of ours: what it dated counts as well.
    var end = view.asOf().plus(AHEAD);
    return new StayRecord(view, reader.history(view.encounter().id(), Instant.EPOCH, end));
  }

  private <T> Sight<T> shown(
      String encounter, Viewer viewer, String what, Function<PatientView, T> read) {
    var found = reader.patient(encounter);
    if (found.isEmpty()) {
      return new Sight.Unknown<>();
    }
    var view = found.get();
    var ward = view.encounter().ward();
    if (!viewer.sees(ward)) {
      return new Sight.OtherWard<>();
    }
    book.looked(viewer.account(), view.encounter().id(), ward, what);
    return new Sight.Shown<>(read.apply(view));
  }
}
