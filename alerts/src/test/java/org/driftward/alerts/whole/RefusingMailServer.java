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

/**
 * A mail server that speaks SMTP and answers every recipient with the same code: what a server that
 * takes everything cannot show.
 */
final class RefusingMailServer implements AutoCloseable {

  private final ServerSocket socket;
  private final String answer;

  RefusingMailServer(int port, String answer) {
    this.answer = answer;
    try {
      this.socket = new ServerSocket(port, 10, InetAddress.getLoopbackAddress());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    var thread = new Thread(this::listen, "refusing-mail-server");
    thread.setDaemon(true);
    thread.start();
  }

  private void listen() {
    while (!socket.isClosed()) {
      try (var client = socket.accept()) {
        talk(client);
      } catch (IOException e) {
        // the client has gone, or the test is over
      }
    }
  }

  private void talk(Socket client) throws IOException {
    var in =
        new BufferedReader(
            new InputStreamReader(client.getInputStream(), StandardCharsets.US_ASCII));
    say(client, "220 refusing.example ESMTP");
    for (var line = in.readLine(); line != null; line = in.readLine()) {
      var command = line.toUpperCase(Locale.ROOT);
      say(client, command.startsWith("RCPT") ? answer : "250 OK");
      if (command.startsWith("QUIT")) {
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
