package org.driftward.deploy.command;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.util.List;
import org.driftward.alerts.contract.Journal.Anchor;
import org.driftward.alerts.contract.JournalChain;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code journal check|export|anchor}: the proof that nobody edited the record. */
@Command(name = "journal", description = "The journal of what happened to episodes and plans.")
final class JournalCommand {

  private @Spec @Nullable CommandSpec spec;

  /**
   * @return 0 if the chain is sound, 1 if not
   */
  @Command(
      name = "check",
      description = {
        "Recompute the chain and name the first entry that was altered, removed, inserted or moved.",
        "With --file or --anchors the chain is recomputed here; otherwise the server does it."
      })
  int check(
      @Mixin ServerOptions options,
      @Option(names = "--file", description = "An exported journal; no server is asked.")
          @Nullable Path file,
      @Option(names = "--anchors", description = "Anchors that were kept elsewhere.")
          @Nullable Path anchors)
      throws IOException {
    if (file == null && anchors == null) {
      return said(options.server().get("/api/journal/check"));
    }
    List<Anchor> kept = anchors == null ? List.of() : JournalLines.anchors(anchors);
    try (var lines = file == null ? export(options) : Files.newInputStream(file)) {
      var check = JournalChain.check(kept);
      JournalLines.entries(lines, check::take);
      var verdict = check.finish();
      if (verdict.fault() == null) {
        sound(verdict.entries(), verdict.head());
        out().printf("%d anchors met%n", kept.size());
        return 0;
      }
      return notSound(verdict.fault());
    }
  }

  @Command(name = "export", description = "Write every entry to a file, one JSON object a line.")
  int export(
      @Mixin ServerOptions options,
      @Option(names = "--to", required = true, description = "The file; replaced if it exists.")
          Path to)
      throws IOException {
    try (var lines = export(options)) {
      Files.copy(lines, to, StandardCopyOption.REPLACE_EXISTING);
    }
    out().printf("Written: %s%n", to);
    return 0;
  }

  @Command(
      name = "anchor",
      description = "Add what the end of the journal is now to a file of anchors.")
  int anchor(
      @Mixin ServerOptions options,
      @Option(names = "--to", required = true, description = "The file; made if it is not there.")
          Path to)
      throws IOException {
    var last = JournalLines.entry(options.server().get("/api/journal/head").toString());
    List<Anchor> before = Files.exists(to) ? JournalLines.anchors(to) : List.of();
    @Nullable Anchor newest = before.isEmpty() ? null : before.get(before.size() - 1);
    var anchor = JournalChain.anchor(newest, last, Clock.systemUTC().instant());
    Files.writeString(
        to, JournalLines.line(anchor), StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    out().printf("Anchored: entry %d, head %s%n", anchor.sequence(), anchor.head());
    return 0;
  }

  private static InputStream export(ServerOptions options) throws IOException {
    return options.server().stream("/api/journal/export", "application/x-ndjson");
  }

  private int said(JsonNode verdict) {
    if (!verdict.path("sound").asBoolean()) {
      return notSound(verdict.path("fault").asText());
    }
    sound(verdict.path("entries").asLong(), verdict.path("head").asText());
    return 0;
  }

  private void sound(long entries, String head) {
    out().printf("Sound: %d entries, head %s%n", entries, head);
  }

  private int notSound(String fault) {
    out().printf("Not sound: %s%n", fault);
    return 1;
  }

  private PrintWriter out() {
    return spec.commandLine().getOut();
  }
}
