package org.driftward.ingest.hl7.mllp;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;

/** A sender that may do with its socket whatever it likes. */
final class Socketed implements AutoCloseable {

  private final Socket socket;
  private final InputStream in;

  Socketed(int port) throws IOException {
    socket = new Socket(InetAddress.getLoopbackAddress(), port);
    socket.setSoTimeout(60_000);
    in = new BufferedInputStream(socket.getInputStream());
  }

  void write(byte[] bytes) throws IOException {
    socket.getOutputStream().write(bytes);
  }

  void write(String text) throws IOException {
    write(text.getBytes(StandardCharsets.UTF_8));
  }

  void send(byte[] message) throws IOException {
    var framed = new ByteArrayOutputStream(message.length + 3);
    framed.write(0x0B);
    framed.writeBytes(message);
    framed.write(0x1C);
    framed.write(0x0D);
    write(framed.toByteArray());
  }

  void send(String message) throws IOException {
    send(message.getBytes(StandardCharsets.UTF_8));
  }

  /** The next answer, or the empty string if the other side has closed. */
  String answer() throws IOException {
    var answer = new ByteArrayOutputStream();
    for (int next = in.read(); next >= 0; next = in.read()) {
      if (next == 0x1C) {
        return answer.toString(StandardCharsets.UTF_8);
      }
      if (next != 0x0B && (answer.size() > 0 || next != 0x0D)) {
        answer.write(next);
      }
    }
    return "";
  }

  @Override
  public void close() throws IOException {
    socket.close();
  }
}
