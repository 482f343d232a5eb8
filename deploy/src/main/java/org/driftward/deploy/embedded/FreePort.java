package org.driftward.deploy.embedded;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;

/** Ports on loopback. */
final class FreePort {

  private FreePort() {}

  /** The wanted port, or any free one for 0. */
  static int choose(int wanted) throws IOException {
    if (wanted != 0) {
      return wanted;
    }
    try (var socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    }
  }
}
