package meltkeeper.protocol.bench;

import meltkeeper.protocol.Outlet;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Rejected;
import org.openjdk.jmh.infra.Blackhole;

/** Takes readings so that none can be optimised away, and refuses to measure a rejection. */
record Sink(Blackhole hole) implements Outlet {

  @Override
  public void reading(Reading reading) {
    hole.consume(reading);
  }

  @Override
  public void rejected(Rejected rejected) {
    throw new IllegalStateException(rejected.toString());
  }
}
