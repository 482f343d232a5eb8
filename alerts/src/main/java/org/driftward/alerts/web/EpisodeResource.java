package org.driftward.alerts.web;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.driftward.alerts.contract.DeliveryDesk;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeDesk;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeDesk.Answer;
import org.driftward.alerts.contract.EpisodeDesk.Request;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.contract.EpisodeView;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Level;
import org.driftward.ingest.contract.Problem;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.driftward.ingest.contract.Word;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Episodes: who needs somebody, and what is being done. */
@Path("/api/episodes")
@ServedBy(Role.ALERTS)
@Produces({MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
@Blocking
@Tag(name = "episodes")
public class EpisodeResource {

  private final EpisodeDesk desk;
  private final DeliveryDesk deliveries;
  private final SignedIn signedIn;

  public EpisodeResource(EpisodeDesk desk, DeliveryDesk deliveries, SignedIn signedIn) {
    this.desk = desk;
    this.deliveries = deliveries;
    this.signedIn = signedIn;
  }

  @GET
  @RolesAllowed({
    AccountRole.BEDSIDE,
    AccountRole.CHARGE,
    AccountRole.RESPONSE,
    AccountRole.MANAGER,
    AccountRole.ADMIN
  })
  @Operation(summary = "Episodes of the wards that the account sees, most urgent first")
  public List<EpisodeView> list(
      @QueryParam("ward") @Nullable String ward,
      @QueryParam("state") @Nullable List<String> states,
      @QueryParam("level") @Nullable String level) {
    if (ward != null) {
      signedIn.mustSee(ward);
    }
    var wards = ward == null ? signedIn.wards() : Set.of(ward);
    var found = desk.list(wards, states(states), level(level));
    var present = deliveries.newest(found.stream().map(Episode::id).toList());
    return found.stream()
        .map(one -> EpisodeView.of(one, present.getOrDefault(one.id(), List.of())))
        .toList();
  }

  @GET
  @Path("/{id}")
  @RolesAllowed({
    AccountRole.BEDSIDE,
    AccountRole.CHARGE,
    AccountRole.RESPONSE,
    AccountRole.MANAGER,
    AccountRole.ADMIN
  })
  @Operation(summary = "One episode, everything that happened to it, and how far each alarm got")
  public StoryView get(@PathParam("id") String id) {
    return StoryView.of(seen(id), desk.story(id), deliveries.of(id));
  }

  @POST
  @Path("/{id}/{action}")
  @RolesAllowed({AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE})
  @Consumes(MediaType.APPLICATION_JSON)
  @Operation(
      summary = "Act on an episode",
      description =
          "acknowledge, attend, hand-over, hold, escalate or close. Holding and closing need a"
              + " reason; a hold needs its end. Handing over needs to whom: the sign-in name of"
              + " somebody who answers for patients, sees the ward and, where the ward keeps"
              + " shifts, is on duty.")
  @APIResponse(
      responseCode = "200",
      description = "Done; the episode as it is now",
      content = @Content(schema = @Schema(implementation = EpisodeView.class)))
  @APIResponse(responseCode = "400", description = "A field is missing or makes no sense")
  @APIResponse(responseCode = "403", description = "The role or the ward does not allow it")
  @APIResponse(responseCode = "404", description = "No such episode or action")
  @APIResponse(
      responseCode = "409",
      description = "It no longer applies; the episode as it is now is enclosed",
      content = @Content(mediaType = Problem.MEDIA_TYPE))
  public Response act(
      @PathParam("id") String id, @PathParam("action") String action, @Nullable ActionBody body) {
    var wanted = action(action);
    seen(id);
    var said = body == null ? ActionBody.EMPTY : body;
    var request =
        new Request(
            id, wanted, said.seenVersion(), said.note(), said.reason(), said.to(), said.until());
    return answer(desk.act(request, signedIn.actor()));
  }

  private EpisodeView view(Episode episode) {
    return EpisodeView.of(episode, deliveries.present(episode.id()));
  }

  private Response answer(Answer answer) {
    if (answer instanceof Answer.Done done) {
      return Response.ok(view(done.episode()), MediaType.APPLICATION_JSON_TYPE).build();
    }
    if (answer instanceof Answer.NoLongerApplies late) {
      return Problems.conflict(view(late.current()), late.why());
    }
    if (answer instanceof Answer.Incomplete incomplete) {
      throw Problems.refused(incomplete.field(), incomplete.why());
    }
    if (answer instanceof Answer.NotAllowed notAllowed) {
      throw Problems.notAllowed(notAllowed.why());
    }
    throw Problems.unknown("episode");
  }

  private Episode seen(String id) {
    var episode = desk.find(id).orElseThrow(() -> Problems.unknown("episode"));
    signedIn.mustSee(episode.ward());
    return episode;
  }

  private static Action action(String word) {
    try {
      return Word.parse(Action.class, word);
    } catch (IllegalArgumentException e) {
      throw Problems.unknown("action");
    }
  }

  private static Set<EpisodeState> states(@Nullable List<String> words) {
    var states = EnumSet.noneOf(EpisodeState.class);
    for (var word : words == null ? List.<String>of() : words) {
      states.add(parsed(EpisodeState.class, "state", word));
    }
    return states;
  }

  private static @Nullable Level level(@Nullable String word) {
    return word == null ? null : parsed(Level.class, "level", word);
  }

  private static <E extends Enum<E> & Word> E parsed(Class<E> type, String field, String word) {
    try {
      return Word.parse(type, word);
    } catch (IllegalArgumentException e) {
      throw Problems.refused(field, String.valueOf(e.getMessage()));
    }
  }
}
