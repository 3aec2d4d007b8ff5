package meltkeeper.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import meltkeeper.desk.AnswerJson;
import meltkeeper.jam.sim.Episode;
import meltkeeper.jam.sim.Truth;
import meltkeeper.protocol.Arrival;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.Sample;
import meltkeeper.source.recording.RecordingWriter;

/** What a simulated printer publishes over a broker, written to a recording. Mutable. */
final class SimulatedRecording {

  static final Instant BEGIN = Instant.parse("2026-03-02T06:00:00Z");

  /** The configuration that reads it. */
  static final String CONFIGURATION =
      """
      zone: Europe/Berlin
      brokers:
        shop: { url: tcp://127.0.0.1:1883 }
      mappings:
        status-json:
          - topic: plant/{printer}/status
            time: { at: /at, format: iso }
            read:
              hot-end-temperature: /now
              hot-end-target: /set
              heater-duty: /duty
              filament-commanded: /asked
              filament-measured: /seen
              job-state: { at: /state, words: { PRINTING: printing, PAUSED: paused, IDLE: idle } }
              job: /job
      printers:
        wren: { from: { broker: shop, mapping: status-json } }
        heron: { from: { broker: shop, mapping: status-json } }
      """;

  private final String printer;
  private final Map<String, Object> open = new LinkedHashMap<>();
  private Optional<Sample> sample = Optional.empty();

  private SimulatedRecording(String printer) {
    this.printer = printer;
  }

  /** Writes the episode as that printer's, and tells what really happened. */
  static Truth write(Path file, String printer, Episode episode) throws IOException {
    SimulatedRecording recording = new SimulatedRecording(printer);
    try (RecordingWriter writer = new RecordingWriter(file)) {
      Truth truth = episode.run(reading -> recording.take(reading, writer));
      recording.flush(writer);
      return truth;
    }
  }

  static Instant at(double seconds) {
    return BEGIN.plus(Duration.ofMillis(Math.round(seconds * 1e3)));
  }

  private void take(Reading reading, RecordingWriter writer) {
    String key = key(reading);
    if (key.isEmpty()) {
      return;
    }
    if (!sample.equals(Optional.of(reading.sample())) || open.containsKey(key)) {
      flush(writer);
      sample = Optional.of(reading.sample());
    }
    open.put(key, value(reading));
  }

  private static String key(Reading reading) {
    if (reading instanceof Reading.HotEndTemperature) {
      return "now";
    } else if (reading instanceof Reading.HotEndTarget) {
      return "set";
    } else if (reading instanceof Reading.HeaterDuty) {
      return "duty";
    } else if (reading instanceof Reading.FilamentCommanded) {
      return "asked";
    } else if (reading instanceof Reading.FilamentMeasured) {
      return "seen";
    } else if (reading instanceof Reading.JobStatus) {
      return "state";
    }
    return reading instanceof Reading.Job ? "job" : "";
  }

  private static Object value(Reading reading) {
    if (reading instanceof Reading.HotEndTemperature now) {
      return now.celsius();
    } else if (reading instanceof Reading.HotEndTarget now) {
      return now.celsius();
    } else if (reading instanceof Reading.HeaterDuty now) {
      return now.fraction();
    } else if (reading instanceof Reading.FilamentCommanded now) {
      return now.millimetres();
    } else if (reading instanceof Reading.FilamentMeasured now) {
      return now.millimetres();
    } else if (reading instanceof Reading.JobStatus now) {
      JobState state = now.state();
      return state.name();
    }
    return ((Reading.Job) reading).name();
  }

  private void flush(RecordingWriter writer) {
    if (open.isEmpty()) {
      return;
    }
    Sample of = sample.orElseThrow();
    open.put("at", BEGIN.plusNanos(of.atNanos()).toString());
    Payload payload = Payload.of(Objects.requireNonNull(AnswerJson.print(open)));
    open.clear();
    writer.accept(
        Received.fresh(
            new Origin.Topic("shop", "plant/" + printer + "/status"),
            payload,
            Arrival.at(Duration.between(Instant.EPOCH, BEGIN).toNanos() + of.arrivalNanos())));
  }
}
