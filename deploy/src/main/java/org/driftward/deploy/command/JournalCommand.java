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
import org.driftward.alerts.contract.AnchorSigner;
import org.driftward.alerts.contract.AnchorVerifier;
import org.driftward.alerts.contract.Journal.Anchor;
import org.driftward.alerts.contract.JournalChain;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code journal check|export|anchor|key}: the proof that nobody edited the record. */
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
          @Nullable Path anchors,
      @Option(
              names = "--key",
              description = "The public key by which the anchors must be signed; with --anchors.")
          @Nullable Path key)
      throws IOException {
    if (file == null && anchors == null && key == null) {
      return said(options.server().get("/api/journal/check"));
    }
    List<Anchor> kept = anchors == null ? List.of() : JournalLines.anchors(anchors);
    var check =
        key == null
            ? JournalChain.check(kept)
            : JournalChain.check(kept, AnchorVerifier.read(Files.readString(key)));
    try (var lines = file == null ? export(options) : Files.newInputStream(file)) {
      JournalLines.entries(lines, check::take);
      var verdict = check.finish();
      if (verdict.fault() == null) {
        sound(verdict.entries(), verdict.head());
        met(kept, key != null);
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
          Path to,
      @Option(names = "--key", description = "What signs it, as made by journal key.")
          @Nullable Path key)
      throws IOException {
    var last = JournalLines.entry(options.server().get("/api/journal/head").toString());
    List<Anchor> before = Files.exists(to) ? JournalLines.anchors(to) : List.of();
    @Nullable Anchor newest = before.isEmpty() ? null : before.get(before.size() - 1);
    var chained = JournalChain.anchor(newest, last, Clock.systemUTC().instant());
    var anchor = key == null ? chained : AnchorSigner.read(Files.readString(key)).sign(chained);
    Files.writeString(
        to, JournalLines.line(anchor), StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    out().printf("Anchored: entry %d, head %s%n", anchor.sequence(), anchor.head());
    return 0;
  }

  @Command(
      name = "key",
      description = {
        "Make a key that signs anchors, readable by its owner only.",
        "Its public half is printed, and written to the same name with .pub behind it."
      })
  int key(
      @Option(names = "--to", required = true, description = "The file; must not exist yet.")
          Path to)
      throws IOException {
    var made = AnchorSigner.newKey();
    KeyFile.write(to, made);
    var shown = AnchorSigner.read(made).publicKey();
    Files.writeString(to.resolveSibling(to.getFileName() + ".pub"), shown);
    out().print(shown);
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

  /** The newest is named: anchors cut off at the end leave nothing else that tells. */
  private void met(List<Anchor> kept, boolean signed) {
    out().printf("%d anchors met%s%n", kept.size(), signed ? ", signed by this key" : "");
    if (!kept.isEmpty()) {
      var newest = kept.get(kept.size() - 1);
      out().printf("The newest: entry %d at %s%n", newest.sequence(), newest.at());
    }
  }

  private int notSound(String fault) {
    out().printf("Not sound: %s%n", fault);
    return 1;
  }

  private PrintWriter out() {
    return spec.commandLine().getOut();
  }
}
