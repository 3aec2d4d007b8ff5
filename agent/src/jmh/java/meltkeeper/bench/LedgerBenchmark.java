package meltkeeper.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import meltkeeper.ledger.Account;
import meltkeeper.ledger.Credits;
import meltkeeper.ledger.Grid;
import meltkeeper.ledger.Ledger;
import meltkeeper.ledger.Limits;
import meltkeeper.part.Exposure;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Sample;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** An hour of a printer, five readings every two seconds, credited; time a reading. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class LedgerBenchmark {

  private static final int MOMENTS = 1800;
  private static final int SIGNALS = 5;
  private static final HotEnd HERON = HotEnd.first("heron");

  private final List<Reading> hour = hour();
  private final Ledger ledger = new Ledger(Limits.DEFAULT);

  /** A printer at 225 °C with the ripple of its regulation, across the edge of a band. */
  private static List<Reading> hour() {
    List<Reading> readings = new ArrayList<>();
    for (int moment = 0; moment < MOMENTS; moment++) {
      Sample sample = Sample.timed(HERON, moment * 2_000_000_000L, moment * 2_000_000_000L);
      readings.add(new Reading.FilamentCommanded(sample, moment * 5.0));
      readings.add(new Reading.FilamentMeasured(sample, moment * 4.9));
      readings.add(new Reading.HeaterDuty(sample, 0.4));
      readings.add(new Reading.HotEndTarget(sample, 225));
      readings.add(new Reading.HotEndTemperature(sample, 225 + Math.sin(moment / 5.0)));
    }
    return List.copyOf(readings);
  }

  /** Ours: exact to the nanosecond, gaps, order, filament, printing and idling. */
  @Benchmark
  @OperationsPerInvocation(MOMENTS * SIGNALS)
  public Account ledger() {
    Credits credits = new Credits(HERON, Grid.PLAIN);
    Account account = Account.opened(HERON);
    for (Reading reading : hour) {
      account = ledger.step(account, reading, credits).account();
    }
    return account.credited(credits.sum());
  }

  /** The floor: seconds added to the band of the later temperature, and nothing else. */
  @Benchmark
  @OperationsPerInvocation(MOMENTS * SIGNALS)
  public double[] floor() {
    double[] bands = new double[120];
    long before = 0;
    for (Reading reading : hour) {
      if (reading instanceof Reading.HotEndTemperature now) {
        long at = now.sample().atNanos();
        bands[Exposure.bandOf(now.celsius()) / Exposure.BAND_CELSIUS] += (at - before) / 1e9;
        before = at;
      }
    }
    return bands;
  }
}
