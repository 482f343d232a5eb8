package org.driftward.ingest.hl7.mllp;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.Socket;
import java.time.Duration;
import org.driftward.ground.part.Supervisor;
import org.jboss.logging.Logger;

/**
 * One sender: message, answer, message, answer, until one of us has had enough. Runs in one thread;
 * {@link #closeIfLate} and {@link #close} come from others.
 *
 * <p>Whatever blocks on the socket is ended by closing the socket, because a read time-out does not
 * stop a sender that dribbles, and nothing else stops a write to one that does not read.
 */
final class Connection implements Runnable {

  private static final Logger LOG = Logger.getLogger(Connection.class);

  private final Socket socket;
  private final MllpListener.Limits limits;
  private final MessageHandler handler;
  private volatile long deadline;
  private volatile boolean stopping;

  Connection(Socket socket, MllpListener.Limits limits, MessageHandler handler) {
    this.socket = socket;
    this.limits = limits;
    this.handler = handler;
    allow(limits.idle());
  }

  @Override
  public void run() {
    try (socket) {
      var frames = new FrameReader(socket.getInputStream(), limits.mostBytes());
      while (!stopping && frames.awaitBegin()) {
        allow(limits.patience());
        answer(frames.read());
        allow(limits.idle());
      }
    } catch (IOException e) {
      LOG.debugf("A sender's connection ended: %s", e.getClass().getSimpleName());
    } catch (RuntimeException | Error e) {
      LOG.errorf("A sender's connection ends for a defect of ours: %s", e.getClass().getName());
      Supervisor.OF_THE_PROCESS.failed("mllp-sender", e);
    }
  }

  private void answer(Frame frame) throws IOException {
    // Kafka bounds the time of the handler itself.
    deadline = Long.MAX_VALUE;
    switch (frame.kind()) {
      case WHOLE -> write(handler.take(frame.message()));
      case BROKEN -> handler.broken(frame.message());
      case TOO_LARGE -> write(handler.tooLarge(frame.message(), frame.length()));
    }
  }

  private void write(byte[] answer) throws IOException {
    var framed = new ByteArrayOutputStream(answer.length + 3);
    framed.write(FrameReader.BEGIN);
    framed.write(answer);
    framed.write(FrameReader.END);
    framed.write(FrameReader.CARRIAGE_RETURN);
    allow(limits.patience());
    socket.getOutputStream().write(framed.toByteArray());
  }

  private void allow(Duration time) {
    deadline = System.nanoTime() + time.toNanos();
  }

  /** Ends a connection that waits for its sender longer than it may. */
  void closeIfLate() {
    long until = deadline;
    if (until != Long.MAX_VALUE && System.nanoTime() - until > 0) {
      close();
    }
  }

  /** The message in hand is finished; its answer is lost, so the sender sends it again. */
  void close() {
    stopping = true;
    try {
      socket.close();
    } catch (IOException e) {
      LOG.debugf("A sender's socket does not close: %s", e.getClass().getSimpleName());
    }
  }
}
