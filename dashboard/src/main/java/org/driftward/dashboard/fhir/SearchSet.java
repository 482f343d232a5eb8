package org.driftward.dashboard.fhir;

import jakarta.ws.rs.core.UriBuilder;
import java.net.URI;
import org.driftward.dashboard.fhir.Search.Start;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleType;
import org.hl7.fhir.r4.model.Bundle.SearchEntryMode;
import org.jspecify.annotations.Nullable;

/** A page of a search as a Bundle. Its links hold what was understood of the search. */
final class SearchSet {

  private SearchSet() {}

  /**
   * @param address of the search, without parameters
   */
  static Bundle of(Search search, Searcher.Page page, URI address) {
    var bundle = new Bundle().setType(BundleType.SEARCHSET);
    bundle.addLink().setRelation("self").setUrl(link(search, search.start(), address));
    if (page.next() != null) {
      bundle.addLink().setRelation("next").setUrl(link(search, page.next(), address));
    }
    for (var observation : page.observations()) {
      bundle
          .addEntry()
          .setFullUrl(address + "/" + observation.getIdElement().getIdPart())
          .setResource(observation)
          .getSearch()
          .setMode(SearchEntryMode.MATCH);
    }
    return bundle;
  }

  private static String link(Search search, @Nullable Start start, URI address) {
    var link = UriBuilder.fromUri(address).queryParam("encounter", "{encounter}");
    var values = new java.util.ArrayList<Object>();
    values.add(search.encounter());
    for (int i = 0; i < search.codes().size(); i++) {
      link.queryParam("code", "{code" + i + "}");
      values.add(search.codes().get(i));
    }
    for (int i = 0; i < search.dates().size(); i++) {
      link.queryParam("date", "{date" + i + "}");
      values.add(search.dates().get(i));
    }
    link.queryParam("_count", search.count());
    if (start != null) {
      link.queryParam("page", start.token());
    }
    return link.build(values.toArray()).toString();
  }
}
