package org.driftward.dashboard.web.page;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.driftward.dashboard.screen.Frame;

/** Pages that say why there is nothing to see. */
@ApplicationScoped
class Answers {

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

  Response page(int status, Frame frame, String title, String words) {
    return Response.status(status)
        .type(MediaType.TEXT_HTML)
        .entity(Pages.nothing(frame, title, words))
        .build();
  }
}
