package org.driftward.deploy.embedded;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** The programs of PostgreSQL and the one cluster they serve: make it, start it, stop it. */
final class PostgresCluster {

  private static final int STOP_SECONDS = 8;

  private final Path folder;
  private final Path cluster;
  private final PostgresPrograms programs;
  private final Unprivileged unprivileged;

  PostgresCluster(Path folder) throws IOException {
    this.folder = folder;
    this.cluster = folder.resolve("cluster");
    this.programs = PostgresPrograms.under(folder);
    this.unprivileged = Unprivileged.onThisMachine();
  }

  /** Makes the cluster unless it is there. One that was begun and not finished is made anew. */
  void initialise(String superuserPassword) throws IOException, InterruptedException {
    if (Files.isDirectory(cluster)) {
      unprivileged.own(cluster);
      return;
    }
    var unfinished = Files.createTempDirectory(folder, "unfinished-");
    var passwordFile = Files.createTempFile(folder, "password-", "");
    try {
      Files.writeString(passwordFile, superuserPassword);
      unprivileged.own(unfinished);
      unprivileged.own(passwordFile);
      run(
          List.of(
              programs.path("initdb"),
              "--pgdata=" + unfinished,
              "--username=postgres",
              "--pwfile=" + passwordFile,
              "--auth=scram-sha-256",
              "--encoding=UTF8",
              "--locale-provider=builtin",
              "--builtin-locale=C.UTF-8",
              "--locale=C",
              "--data-checksums"));
      Files.move(unfinished, cluster, StandardCopyOption.ATOMIC_MOVE);
    } finally {
      Files.deleteIfExists(passwordFile);
    }
  }

  /**
   * After a crash of ours the server may still run, and its pid file may name a process that is
   * something else by now. We hold the data folder, so either is ours to end or remove.
   */
  void stopLeftOver() throws IOException, InterruptedException {
    var pidFile = cluster.resolve("postmaster.pid");
    if (!Files.exists(pidFile)) {
      return;
    }
    if (server(pidFile).isPresent()) {
      stop();
    }
    Files.deleteIfExists(pidFile);
  }

  Process start(int port) throws IOException {
    // In a session of its own: Ctrl-C on the terminal must not reach it before the application.
    var command =
        new ArrayList<>(List.of("setsid", programs.path("postgres"), "-D", cluster.toString()));
    settings(port).forEach(setting -> command.addAll(List.of("-c", setting)));
    return new ProcessBuilder(unprivileged.command(command))
        .redirectErrorStream(true)
        .redirectOutput(log())
        .start();
  }

  /** Ends open sessions, writes everything, and returns when the server is gone. */
  void stop() throws IOException, InterruptedException {
    for (var mode : List.of("fast", "immediate")) {
      var stopped =
          finish(
              List.of(
                  programs.path("pg_ctl"),
                  "stop",
                  "--pgdata=" + cluster,
                  "--mode=" + mode,
                  "--timeout=" + STOP_SECONDS));
      if (stopped == 0 || !Files.exists(cluster.resolve("postmaster.pid"))) {
        return;
      }
    }
  }

  private Optional<ProcessHandle> server(Path pidFile) throws IOException {
    var pid = Files.readString(pidFile).lines().findFirst().orElse("").strip();
    if (!pid.matches("\\d{1,18}")) {
      return Optional.empty();
    }
    return ProcessHandle.of(Long.parseLong(pid))
        .filter(ProcessHandle::isAlive)
        .filter(
            process ->
                process.info().command().filter(programs.path("postgres")::equals).isPresent());
  }

  /** The server says what went wrong, but no values: they would be patients' data in a log. */
  private List<String> settings(int port) {
    return List.of(
        "port=" + port,
        "listen_addresses=127.0.0.1",
        "unix_socket_directories=",
        "max_connections=60",
        "shared_buffers=64MB",
        "timezone=UTC",
        "log_timezone=UTC",
        "log_error_verbosity=terse",
        "log_min_error_statement=panic",
        "logging_collector=on",
        "log_directory=" + folder.resolve("log"),
        "log_filename=postgres-%a.log",
        "log_truncate_on_rotation=on",
        "log_rotation_age=1d");
  }

  private void run(List<String> command) throws IOException, InterruptedException {
    int code = finish(command);
    if (code != 0) {
      throw new IOException(
          command.get(0) + " ended with " + code + "; see " + log() + " for its words");
    }
  }

  private int finish(List<String> command) throws IOException, InterruptedException {
    var process =
        new ProcessBuilder(unprivileged.command(command))
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.appendTo(log()))
            .start();
    if (!process.waitFor(2, TimeUnit.MINUTES)) {
      process.destroyForcibly();
      throw new IOException(command.get(0) + " does not come to an end");
    }
    return process.exitValue();
  }

  private File log() {
    return folder.resolve("start.log").toFile();
  }
}
