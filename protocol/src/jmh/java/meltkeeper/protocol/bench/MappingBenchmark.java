package meltkeeper.protocol.bench;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import meltkeeper.protocol.Arrival;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.Signal;
import meltkeeper.protocol.mapping.JsonPath;
import meltkeeper.protocol.mapping.Mapping;
import meltkeeper.protocol.mapping.MappingDecoder;
import meltkeeper.protocol.mapping.MessageRule;
import meltkeeper.protocol.mapping.PayloadForm;
import meltkeeper.protocol.mapping.Route;
import meltkeeper.protocol.mapping.TimeFormat;
import meltkeeper.protocol.mapping.TimeRule;
import meltkeeper.protocol.mapping.TopicPattern;
import meltkeeper.protocol.mapping.ValueRule;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;

/** One status of 212 bytes and eight signals, told as readings, beside Jackson alone. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class MappingBenchmark {

  private static final String STATUS =
      """
      {"at":"2026-03-02T08:00:00.250Z","hotend":{"now":214.9,"set":215.0,"pwm":54},\
      "feed":{"asked":1234.5,"seen":1230.25},"job":{"state":"RUN","name":"drawer-organiser-4"},\
      "spool":{"material":"PLA"},"fan":{"rpm":4200}}""";

  private final Received received =
      Received.fresh(
          new Origin.Topic("shop", "plant/heron/status"), Payload.of(STATUS), Arrival.at(1));
  private final MappingDecoder decoder =
      new MappingDecoder(List.of(new Route(mapping(), Set.of("heron", "ibis"))));

  private final JsonFactory factory = new JsonFactory();
  private final ObjectMapper mapper = new ObjectMapper();
  private final List<JsonPointer> pointers =
      Stream.of(
              "/at",
              "/hotend/now",
              "/hotend/set",
              "/hotend/pwm",
              "/feed/asked",
              "/feed/seen",
              "/job/state",
              "/job/name",
              "/spool/material")
          .map(JsonPointer::compile)
          .toList();

  /** Ours: bytes to readings, with the topic's match, the time, the words and the scale. */
  @Benchmark
  public void readings(Blackhole sink) {
    decoder.decode(received, new Sink(sink));
  }

  /** The baseline: the document as a tree, and each pointer's node; no reading, no check. */
  @Benchmark
  public void tree(Blackhole sink) throws IOException {
    JsonNode tree = mapper.readTree(received.payload().array());
    for (JsonPointer pointer : pointers) {
      sink.consume(tree.at(pointer));
    }
  }

  /** The floor: the parser's tokens alone, no value looked at. */
  @Benchmark
  public int tokens() throws IOException {
    int count = 0;
    try (JsonParser in = factory.createParser(received.payload().array())) {
      while (in.nextToken() != null) {
        count++;
      }
    }
    return count;
  }

  private static Mapping mapping() {
    return new Mapping(
        "status-json",
        List.of(
            new MessageRule(
                TopicPattern.of("plant/{printer}/status"),
                PayloadForm.JSON,
                Optional.of(new TimeRule(JsonPath.of("/at"), TimeFormat.ISO)),
                List.of(
                    ValueRule.plain(Signal.HOT_END_TEMPERATURE, JsonPath.of("/hotend/now")),
                    ValueRule.plain(Signal.HOT_END_TARGET, JsonPath.of("/hotend/set")),
                    new ValueRule(
                        Signal.HEATER_DUTY,
                        JsonPath.of("/hotend/pwm"),
                        0.0078740157,
                        0,
                        Map.of(),
                        0),
                    ValueRule.plain(Signal.FILAMENT_COMMANDED, JsonPath.of("/feed/asked")),
                    ValueRule.plain(Signal.FILAMENT_MEASURED, JsonPath.of("/feed/seen")),
                    new ValueRule(
                        Signal.JOB_STATE,
                        JsonPath.of("/job/state"),
                        1,
                        0,
                        Map.of("RUN", JobState.PRINTING, "REST", JobState.IDLE),
                        0),
                    ValueRule.plain(Signal.JOB, JsonPath.of("/job/name")),
                    ValueRule.plain(Signal.MATERIAL, JsonPath.of("/spool/material"))))));
  }
}
