package meltkeeper.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import meltkeeper.jam.Outlook;
import meltkeeper.jam.Watch;
import meltkeeper.jam.WatchSettings;
import meltkeeper.ledger.Account;
import meltkeeper.ledger.Credits;
import meltkeeper.ledger.Grid;
import meltkeeper.ledger.Ledger;
import meltkeeper.ledger.Limits;
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

/** An hour of a printer, five readings every two seconds, watched; readings a second. */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class WatchBenchmark {

  private static final int MOMENTS = 1800;
  private static final int SIGNALS = 5;
  private static final HotEnd HERON = HotEnd.first("heron");

  private final List<Reading> hour = hour();
  private final Ledger ledger = new Ledger(Limits.DEFAULT);

  private static List<Reading> hour() {
    Random random = new Random(1);
    List<Reading> readings = new ArrayList<>();
    double fed = 0;
    for (int moment = 0; moment < MOMENTS; moment++) {
      Sample sample = Sample.timed(HERON, moment * 2_000_000_000L, moment * 2_000_000_000L);
      double step = 1 + 10 * random.nextDouble();
      fed += step;
      readings.add(new Reading.FilamentCommanded(sample, fed));
      readings.add(new Reading.FilamentMeasured(sample, fed * 0.98));
      readings.add(new Reading.HeaterDuty(sample, 0.25 + 0.01 * step));
      readings.add(new Reading.HotEndTarget(sample, 225));
      readings.add(new Reading.HotEndTemperature(sample, 225 + 0.3 * random.nextGaussian()));
    }
    return List.copyOf(readings);
  }

  /** The watch alone. */
  @Benchmark
  @OperationsPerInvocation(MOMENTS * SIGNALS)
  public Outlook watch() {
    Watch watch = Watch.opened(HERON, WatchSettings.DEFAULT);
    for (Reading reading : hour) {
      watch.step(reading);
    }
    return watch.outlook();
  }

  /** Ledger and watch together, as the pipeline needs them. */
  @Benchmark
  @OperationsPerInvocation(MOMENTS * SIGNALS)
  public double ledgerAndWatch() {
    Credits credits = new Credits(HERON, Grid.PLAIN);
    Account account = Account.opened(HERON);
    Watch watch = Watch.opened(HERON, WatchSettings.DEFAULT);
    for (Reading reading : hour) {
      account = ledger.step(account, reading, credits).account();
      watch.step(reading);
    }
    return account.credited(credits.sum()).lastCelsius().orElse(0)
        + watch.outlook().evidence().size();
  }
}
