package meltkeeper.protocol.mapping;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import meltkeeper.protocol.Arrival;
import meltkeeper.protocol.Decoder;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Outlet;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Signal;

/** What a decoder told, and the mappings and messages to make it speak. */
final class Heard implements Outlet {

  static final String BROKER = "shop";
  static final long ARRIVED = 1_772_438_400_000_000_000L;

  final List<Reading> readings = new ArrayList<>();
  final List<Rejected> rejected = new ArrayList<>();

  @Override
  public void reading(Reading reading) {
    readings.add(reading);
  }

  @Override
  public void rejected(Rejected reason) {
    rejected.add(reason);
  }

  List<Rejected.Reason> reasons() {
    return rejected.stream().map(Rejected::reason).toList();
  }

  static Heard of(Decoder decoder, String topic, String payload) {
    return of(decoder, topic, payload.getBytes(StandardCharsets.UTF_8));
  }

  static Heard of(Decoder decoder, String topic, byte[] payload) {
    Heard heard = new Heard();
    decoder.decode(message(topic, payload), heard);
    return heard;
  }

  static Received message(String topic, byte[] payload) {
    return Received.fresh(
        new Origin.Topic(BROKER, topic), Payload.of(payload), Arrival.at(ARRIVED));
  }

  /** A decoder of one JSON rule for heron at {@code plant/{printer}/status}. */
  static MappingDecoder json(Optional<TimeRule> time, ValueRule... values) {
    return decoder(
        new MessageRule(
            TopicPattern.of("plant/{printer}/status"), PayloadForm.JSON, time, List.of(values)));
  }

  static MappingDecoder decoder(MessageRule... rules) {
    return new MappingDecoder(
        List.of(new Route(new Mapping("status-json", List.of(rules)), Set.of("heron"))));
  }

  static ValueRule plain(Signal signal, String pointer) {
    return ValueRule.plain(signal, JsonPath.of(pointer));
  }

  static ValueRule scaled(Signal signal, String pointer, double scale, double offset) {
    return new ValueRule(signal, JsonPath.of(pointer), scale, offset, Map.of(), 0);
  }

  static ValueRule words(String pointer, Map<String, JobState> words) {
    return new ValueRule(Signal.JOB_STATE, JsonPath.of(pointer), 1, 0, words, 0);
  }

  static ValueRule onHotEnd(int hotEnd, Signal signal, String pointer) {
    return new ValueRule(signal, JsonPath.of(pointer), 1, 0, Map.of(), hotEnd);
  }

  static Optional<TimeRule> time(String pointer, TimeFormat format) {
    return Optional.of(new TimeRule(JsonPath.of(pointer), format));
  }
}
