package org.driftward.deploy.whole;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;

/** A sender of HL7 v2 on one connection: message, answer, message, answer. For one thread. */
public final class MllpSender implements AutoCloseable {

  private static final int BEGIN = 0x0B;
  private static final int END = 0x1C;
  private static final int PATIENCE_MILLIS = 60_000;

  private final Socket socket;
  private final InputStream in;

  /**
   * @param port of loopback
   */
  public MllpSender(int port) {
    try {
      socket = new Socket(InetAddress.getLoopbackAddress(), port);
      socket.setSoTimeout(PATIENCE_MILLIS);
      socket.setTcpNoDelay(true);
      in = new BufferedInputStream(socket.getInputStream());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The acknowledgement. */
  public String exchange(String message) {
    try {
      var framed = new ByteArrayOutputStream(message.length() + 3);
      framed.write(BEGIN);
      framed.writeBytes(message.getBytes(StandardCharsets.UTF_8));
      framed.write(END);
      framed.write('\r');
      socket.getOutputStream().write(framed.toByteArray());
      var answer = new ByteArrayOutputStream();
      for (int next = in.read(); next >= 0 && next != END; next = in.read()) {
        answer.write(next);
      }
      return answer.toString(StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
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
