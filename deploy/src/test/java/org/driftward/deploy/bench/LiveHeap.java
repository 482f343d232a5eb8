package org.driftward.deploy.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;

/**
 * What another virtual machine holds on to, watched while it works: the live bytes after a full
 * collection, now and then, and the most memory the operating system ever gave it.
 */
final class LiveHeap implements AutoCloseable {

  private static final long PAUSE_MILLIS = 2_000;
  private static final Path JCMD = Path.of(System.getProperty("java.home"), "bin", "jcmd");

  private final long pid;
  private final AtomicBoolean over = new AtomicBoolean();
  private final Thread watch = new Thread(this::watch, "live-heap");
  private volatile long most;
  private volatile long resident;

  LiveHeap(long pid) {
    this.pid = pid;
    watch.setDaemon(true);
    watch.start();
  }

  /** The most live bytes that were seen. */
  long most() {
    return most;
  }

  /** The most bytes of memory that the process ever had, heap or not. */
  long resident() {
    return resident;
  }

  private void watch() {
    try {
      while (!over.get()) {
        resident = Math.max(resident, residentNow());
        most = Math.max(most, liveNow());
        Thread.sleep(PAUSE_MILLIS);
      }
    } catch (IOException e) {
      // The process has ended; what was seen of it stands.
      over.set(true);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** A class histogram counts what is live, after a full collection; its last line is the total. */
  private long liveNow() throws IOException, InterruptedException {
    var process =
        new ProcessBuilder(JCMD.toString(), String.valueOf(pid), "GC.class_histogram").start();
    long total = 0;
    try (var lines = process.inputReader()) {
      for (var line = lines.readLine(); line != null; line = lines.readLine()) {
        if (line.startsWith("Total")) {
          total = Long.parseLong(line.strip().replaceFirst(".*\\s", ""));
        }
      }
    }
    process.waitFor(10, TimeUnit.SECONDS);
    return total;
  }

  private long residentNow() throws IOException {
    try (var lines = Files.lines(Path.of("/proc", String.valueOf(pid), "status"))) {
      return lines
          .filter(line -> line.startsWith("VmHWM:"))
          .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")) << 10)
          .findFirst()
          .orElse(0);
    }
  }

  @Override
  public void close() {
    over.set(true);
    watch.interrupt();
  }
}
