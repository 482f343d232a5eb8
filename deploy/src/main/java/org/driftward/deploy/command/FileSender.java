package org.driftward.deploy.command;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.OutputStream;
import java.net.URLEncoder;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Sends a file in parts. The server knows it by what is in it, so the same file goes on where it
 * was broken off, whichever side broke off.
 */
final class FileSender {

  private static final int PART = 1 << 20;

  private final Server server;
  private final Path file;
  private final @Nullable String mapping;
  private final ProgressBar bar;

  FileSender(Server server, Path file, @Nullable String mapping, ProgressBar bar) {
    this.server = server;
    this.file = file;
    this.mapping = mapping;
    this.bar = bar;
  }

  /**
   * @return the import's id
   */
  String send() throws IOException {
    long size = Files.size(file);
    try (var channel = FileChannel.open(file)) {
      var first = read(channel, 0);
      var begun =
          Patience.withAServerThatIsThere(bar)
              .insist(
                  () ->
                      server.exchange(
                          "POST",
                          "/api/imports?" + query(),
                          Map.of(
                              "Content-Type", type(),
                              "Upload-Complete", first.length == size ? "?1" : "?0",
                              "Upload-Length", String.valueOf(size)),
                          BodyPublishers.ofByteArray(first)));
      if (begun.status() / 100 != 2) {
        throw server.refused(begun);
      }
      var id = begun.json().path("id").asText();
      long offset = isOver(begun) ? size : offset(begun);
      while (offset < size) {
        bar.show("sending", offset, size);
        offset = sendPart(id, channel, offset, size);
      }
      return id;
    }
  }

  private long sendPart(String id, FileChannel channel, long offset, long size) throws IOException {
    var part = read(channel, offset);
    var answer =
        Patience.alsoThroughARestart(bar)
            .insist(
                () ->
                    server.exchange(
                        "PATCH",
                        "/api/imports/" + id,
                        Map.of(
                            "Content-Type",
                            "application/partial-upload",
                            "Upload-Offset",
                            String.valueOf(offset),
                            "Upload-Complete",
                            offset + part.length == size ? "?1" : "?0"),
                        BodyPublishers.ofByteArray(part)));
    if (answer.status() / 100 != 2 && answer.status() != 409) {
      throw server.refused(answer);
    }
    return isOver(answer) ? size : offset(answer);
  }

  /** Whether there is nothing more to send: all of it is known, or none of it is understood. */
  private static boolean isOver(Server.Answer answer) throws IOException {
    return answer.status() / 100 == 2 && !answer.json().path("state").asText().equals("running");
  }

  private static long offset(Server.Answer answer) throws IOException {
    return answer
        .headers()
        .firstValueAsLong("Upload-Offset")
        .orElseThrow(() -> new IOException("The server does not say where to go on"));
  }

  private static byte[] read(FileChannel channel, long offset) throws IOException {
    var part = ByteBuffer.allocate(PART);
    while (part.hasRemaining() && channel.read(part, offset + part.position()) >= 0) {
      // Until the part is full or the file ends.
    }
    return Arrays.copyOf(part.array(), part.position());
  }

  private String type() {
    var name = file.toString();
    return name.endsWith(".ndjson") || name.endsWith(".jsonl")
        ? "application/x-ndjson"
        : "text/csv";
  }

  private String query() throws IOException {
    var name = file.getFileName();
    return "name="
        + URLEncoder.encode(String.valueOf(name), UTF_8)
        + "&key=sha-256:"
        + hash()
        + (mapping == null ? "" : "&mapping=" + URLEncoder.encode(mapping, UTF_8));
  }

  private String hash() throws IOException {
    try {
      var digest = MessageDigest.getInstance("SHA-256");
      try (var out = new DigestOutputStream(OutputStream.nullOutputStream(), digest)) {
        Files.copy(file, out);
      }
      return HexFormat.of().formatHex(digest.digest());
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
