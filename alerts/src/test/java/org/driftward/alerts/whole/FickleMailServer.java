package org.driftward.alerts.whole;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * A mail server that speaks just enough SMTP (RFC 5321) to say no: what a server that takes
 * everything cannot show.
 */
final class FickleMailServer implements AutoCloseable {

  /** What is said over one connection. */
  private interface Session {
    /**
     * @param line without its end, in capitals
     * @return null to say nothing
     */
    @Nullable String answer(String line);
  }

  private final ServerSocket socket;
  private final Supplier<Session> sessions;

  private FickleMailServer(int port, Supplier<Session> sessions) {
    this.sessions = sessions;
    try {
      this.socket = new ServerSocket(port, 10, InetAddress.getLoopbackAddress());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    var thread = new Thread(this::listen, "fickle-mail-server");
    thread.setDaemon(true);
    thread.start();
  }

  /** Answers every recipient with the same words. */
  static FickleMailServer refusing(int port, String words) {
    return new FickleMailServer(port, () -> line -> line.startsWith("RCPT") ? words : "250 OK");
  }

  /**
   * Takes one letter over each connection and gives it up the moment that it is used for another: a
   * server whose patience with an idle connection is over.
   */
  static FickleMailServer impatient(int port) {
    return new FickleMailServer(port, OneLetter::new);
  }

  private static final class OneLetter implements Session {
    private boolean reading;
    private boolean taken;

    @Override
    public @Nullable String answer(String line) {
      if (reading) {
        taken = line.equals(".");
        reading = !taken;
        return taken ? "250 OK" : null;
      }
      if (taken && line.startsWith("MAIL")) {
        return "421 idle for too long";
      }
      reading = line.startsWith("DATA");
      return reading ? "354 go on" : "250 OK";
    }
  }

  private void listen() {
    while (!socket.isClosed()) {
      try (var client = socket.accept()) {
        talk(client, sessions.get());
      } catch (IOException e) {
        // the client has gone, or the test is over
      }
    }
  }

  private static void talk(Socket client, Session session) throws IOException {
    var in =
        new BufferedReader(
            new InputStreamReader(client.getInputStream(), StandardCharsets.US_ASCII));
    say(client, "220 fickle.example ESMTP");
    for (var line = in.readLine(); line != null; line = in.readLine()) {
      var command = line.toUpperCase(Locale.ROOT);
      var answer = session.answer(command);
      if (answer != null) {
        say(client, answer);
      }
      if (command.equals("QUIT")) {
        return;
      }
    }
  }

  private static void say(Socket client, String words) throws IOException {
    client.getOutputStream().write((words + "\r\n").getBytes(StandardCharsets.US_ASCII));
    client.getOutputStream().flush();
  }

  @Override
  public void close() {
    try {
      socket.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
