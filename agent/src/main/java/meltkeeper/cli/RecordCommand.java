package meltkeeper.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import meltkeeper.config.Settings;
import meltkeeper.source.Source;
import meltkeeper.source.SteadyClock;
import meltkeeper.source.mqtt.Session;
import meltkeeper.source.recording.RecordingWriter;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Writes raw telemetry to a file. */
@Command(
    name = "record",
    description = "Writes raw telemetry to a file as it is received, until it is stopped.")
final class RecordCommand implements Callable<Integer> {

  private static final Logger LOG = LoggerFactory.getLogger(RecordCommand.class);

  @Mixin private ConfigFile config = new ConfigFile();

  @Option(
      names = "--out",
      required = true,
      paramLabel = "FILE",
      description = "A new file; compressed when its name ends in .gz.")
  private Path out = Path.of("");

  @Override
  public Integer call() throws InterruptedException {
    Settings settings = config.settings();
    CountDownLatch stopped = new CountDownLatch(1);
    CountDownLatch closed = new CountDownLatch(1);
    StopSignal.arrange(stopped, closed);
    SteadyClock clock = new SteadyClock();
    List<Source> sources = Joints.sources(settings, broker -> Session.passing(), clock);
    try (RecordingWriter writer = new RecordingWriter(out)) {
      sources.forEach(source -> source.start(writer));
      LOG.info("recording to {}", out);
      while (!stopped.await(1, TimeUnit.SECONDS)) {
        writer.flush();
      }
      sources.forEach(Source::close);
      LOG.info("{} lines recorded to {}", writer.lines(), out);
      return 0;
    } catch (IOException e) {
      throw new FailedException(
          "cannot record to " + out + ": " + e + "; name a new file in a folder that exists");
    } finally {
      sources.forEach(Source::close);
      closed.countDown();
    }
  }
}
