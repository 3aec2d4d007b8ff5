package meltkeeper.pipeline;

import meltkeeper.protocol.Arrival;
import meltkeeper.protocol.Decoder;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Outlet;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Sample;

/** Messages whose payload is a temperature, timed by their arrival, and who reads them. */
final class Heard {

  static final HotEnd HERON = HotEnd.first("heron");

  static final Decoder DECODER = Heard::decode;

  private Heard() {}

  static long nanos(double seconds) {
    return Math.round(seconds * 1e9);
  }

  static Received celsius(double atSeconds, double celsius) {
    return text(atSeconds, String.valueOf(celsius));
  }

  static Received text(double atSeconds, String payload) {
    return Received.fresh(
        new Origin.Topic("shop", "plant/heron/now"),
        Payload.of(payload),
        Arrival.at(nanos(atSeconds)));
  }

  private static void decode(Received received, Outlet outlet) {
    Sample sample = Sample.arrived(HERON, received.arrival().steadyNanos());
    try {
      double celsius = Double.parseDouble(received.payload().text());
      outlet.reading(new Reading.HotEndTarget(sample, celsius));
      outlet.reading(new Reading.HotEndTemperature(sample, celsius));
    } catch (NumberFormatException e) {
      outlet.rejected(new Rejected(Rejected.Reason.NOT_A_NUMBER, received.payload().text()));
    }
  }
}
