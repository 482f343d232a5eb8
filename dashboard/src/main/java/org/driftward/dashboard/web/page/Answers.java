package org.driftward.dashboard.web.page;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriBuilder;
import java.net.URI;
import org.driftward.dashboard.screen.Frame;
import org.driftward.dashboard.screen.Outcome;
import org.driftward.ingest.contract.Encounter;
import org.jspecify.annotations.Nullable;

/** What a page answers when it has nothing of its own to show. */
@ApplicationScoped
class Answers {

  private static final int OK = 200;

  private final Frames frames;

  Answers(Frames frames) {
    this.frames = frames;
  }

  Response notYourWard(Visit visit, String here) {
    return page(
        403,
        frames.of(visit, here),
        "Not your ward",
        "Your account is not assigned to this ward. Whoever runs Driftward in your hospital can"
            + " change that.");
  }

  Response unknown(Visit visit, String here) {
    return page(
        404, frames.of(visit, here), "Not known here", "Nothing is recorded under this number.");
  }

  /**
   * What came of a form, which stays as it is where a script sent it.
   *
   * @param scripted the header by which a script tells that it asks, or null
   */
  Response told(Visit visit, String here, int status, String words, @Nullable String scripted) {
    return scripted == null
        ? page(status, frames.of(visit, here), "Nothing was changed", words)
        : Response.status(status)
            .type(MediaType.TEXT_HTML)
            .entity(Pages.outcome(new Outcome(status == OK, words)))
            .build();
  }

  /** On to another page, as browser or script understands it. */
  static Response onward(String page, @Nullable String scripted) {
    return scripted == null
        ? Response.seeOther(URI.create(page)).build()
        : Response.ok().header("HX-Redirect", page).build();
  }

  /**
   * On to the same page of the stay that counts, where an encounter was merged into another; null
   * where it was not.
   *
   * @param page below that of the patient, such as {@code assess}, or empty
   */
  static @Nullable Response ofSurvivor(Encounter encounter, String page) {
    var survivor = encounter.mergedInto();
    return survivor == null
        ? null
        : Response.seeOther(UriBuilder.fromPath("/encounters/{id}").path(page).build(survivor))
            .build();
  }

  Response page(int status, Frame frame, String title, String words) {
    return Response.status(status)
        .type(MediaType.TEXT_HTML)
        .entity(Pages.nothing(frame, title, words))
        .build();
  }
}
