package org.driftward.dashboard.fhir;

import jakarta.inject.Singleton;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.driftward.dashboard.core.Moment;
import org.driftward.dashboard.core.MomentReader;
import org.driftward.dashboard.core.MomentReader.Mark;
import org.driftward.dashboard.fhir.Search.Start;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.PublishedId;
import org.hl7.fhir.r4.model.Observation;
import org.jspecify.annotations.Nullable;

/** Finds Observations in the read model, newest first. Thread-safe, blocking. */
@Singleton
final class Searcher {

  private static final int PIECE = 200;

  private final MomentReader moments;
  private final Publication publication;

  Searcher(MomentReader moments, Catalogue catalogue) {
    this.moments = moments;
    this.publication = new Publication(catalogue);
  }

  /**
   * @param next where the next page begins, or null after the last
   */
  record Page(List<Observation> observations, @Nullable Start next) {}

  Page find(Search search) {
    var codes = new CodeFilter(search.codes());
    var found = new ArrayList<Observation>();
    var start = search.start();
    while (true) {
      var piece = piece(search, start);
      for (var moment : piece) {
        var mark = mark(moment);
        var observations = publication.of(moment);
        int first = start != null && start.mark().equals(mark) ? start.index() : 0;
        for (int i = first; i < observations.size(); i++) {
          if (codes.holds(observations.get(i))) {
            if (found.size() == search.count()) {
              return new Page(found, new Start(mark, i));
            }
            found.add(observations.get(i));
          }
        }
      }
      if (piece.size() < PIECE) {
        return new Page(found, null);
      }
      start = new Start(mark(piece.get(PIECE - 1)), Integer.MAX_VALUE);
    }
  }

  private List<Moment> piece(Search search, @Nullable Start start) {
    return moments.read(
        search.encounter(),
        search.dateFilter().from(),
        search.dateFilter().to(),
        start == null ? null : start.mark(),
        PIECE);
  }

  /** The assessment that a published name belongs to; empty for what is no such name. */
  Optional<Moment> moment(String id) {
    return PublishedId.momentOf(id).flatMap(moments::named);
  }

  Optional<Observation> read(Moment moment, String id) {
    return publication.of(moment).stream()
        .filter(observation -> observation.getIdElement().getIdPart().equals(id))
        .findFirst();
  }

  private static Mark mark(Moment moment) {
    return new Mark(moment.assessment().takenAt(), moment.assessment().id());
  }
}
