package meltkeeper.protocol.fuzz;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import meltkeeper.protocol.Arrival;
import meltkeeper.protocol.Decoder;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Outlet;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.Rejected;
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

/** Hears bytes through a decoder, and holds what comes out to what readings promise. */
final class Listener implements Outlet {

  private static final long ARRIVED = 1_772_438_400_000_000_000L;

  private int readings;
  private int rejections;

  @Override
  public void reading(Reading reading) {
    readings++;
    if (reading instanceof Reading.HotEndTemperature hot
        && !(hot.celsius() >= -50 && hot.celsius() <= 600)) {
      throw new AssertionError("an impossible temperature: " + reading);
    }
  }

  @Override
  public void rejected(Rejected rejected) {
    rejections++;
    if (rejected.detail().length() > Rejected.LONGEST || rejected.detail().contains("\n")) {
      throw new AssertionError("a detail that is no line: " + rejected.detail());
    }
  }

  int readings() {
    return readings;
  }

  int rejections() {
    return rejections;
  }

  /** Lets a decoder hear a message on a printer's topic. */
  Listener message(Decoder decoder, byte[] payload) {
    decoder.decode(
        Received.fresh(
            new Origin.Topic("shop", "plant/heron/status"),
            Payload.of(payload),
            Arrival.at(ARRIVED)),
        this);
    return this;
  }

  /** Lets a decoder hear a line that came from, or went to, a printer. */
  void line(Decoder decoder, Payload line, Origin.Direction direction) {
    decoder.decode(
        Received.fresh(new Origin.Line("ibis", direction), line, Arrival.at(ARRIVED)), this);
  }

  /** A decoder of JSON that reads values of every kind. */
  static MappingDecoder json() {
    return decoder(
        PayloadForm.JSON,
        Optional.of(new TimeRule(JsonPath.of("/at"), TimeFormat.ISO)),
        value(Signal.HOT_END_TEMPERATURE, "/hotend/now"),
        value(Signal.HOT_END_TARGET, "/hotend/set"),
        value(Signal.HEATER_DUTY, "/hotend/pwm"),
        value(Signal.FILAMENT_COMMANDED, "/feed/0/asked"),
        value(Signal.JOB_STATE, "/job/state"),
        value(Signal.JOB, "/job/name"));
  }

  /** A decoder of a payload that is a number itself. */
  static MappingDecoder number() {
    return decoder(PayloadForm.NUMBER, Optional.empty(), value(Signal.HOT_END_TEMPERATURE, ""));
  }

  private static ValueRule value(Signal signal, String pointer) {
    return ValueRule.plain(signal, JsonPath.of(pointer));
  }

  private static MappingDecoder decoder(
      PayloadForm form, Optional<TimeRule> time, ValueRule... values) {
    MessageRule rule =
        new MessageRule(TopicPattern.of("plant/{printer}/status"), form, time, List.of(values));
    return new MappingDecoder(
        List.of(new Route(new Mapping("status", List.of(rule)), Set.of("heron"))));
  }
}
