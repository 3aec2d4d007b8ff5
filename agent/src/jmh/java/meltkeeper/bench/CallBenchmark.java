package meltkeeper.bench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.IterationParams;
import org.openjdk.jmh.runner.IterationType;

/**
 * Two hours of a printer's readings taken in and committed, beside each kind of bad receiver in
 * turn. One after the other in one run, in random order, so that whatever else the computer does
 * troubles all alike; the table of medians that it prints at its end is the result, and the time of
 * a whole turn, which is what the harness tells, means little.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4, time = 5)
@Measurement(iterations = 20, time = 5)
@Fork(1)
public class CallBenchmark {

  private static final List<String> ROUTES = List.of("none", "hanging", "failing", "gone", "full");
  private static final long SEED = 20260302L;

  private final Map<String, CallSite> sites = new LinkedHashMap<>();
  private final Map<String, List<Long>> nanos = new LinkedHashMap<>();
  private final List<String> order = new ArrayList<>(ROUTES);
  private final Random random = new Random(SEED);
  private boolean isMeasured;

  @Setup(Level.Trial)
  public void open() throws IOException {
    for (String route : ROUTES) {
      sites.put(route, new CallSite(route));
      nanos.put(route, new ArrayList<>());
    }
  }

  @Setup(Level.Iteration)
  public void begin(IterationParams iteration) {
    isMeasured = iteration.getType() == IterationType.MEASUREMENT;
  }

  @Benchmark
  public void eachInTurn() {
    Collections.shuffle(order, random);
    for (String route : order) {
      long began = System.nanoTime();
      Objects.requireNonNull(sites.get(route)).takeTwoHours();
      long took = System.nanoTime() - began;
      if (isMeasured) {
        Objects.requireNonNull(nanos.get(route)).add(took);
      }
    }
  }

  @TearDown(Level.Trial)
  public void close() throws IOException {
    double alone = median("none");
    for (String route : ROUTES) {
      System.out.printf(
          Locale.ROOT,
          "%n%-8s median of %d: %.2f ms, ratio %.2f",
          route,
          Objects.requireNonNull(nanos.get(route)).size(),
          median(route) / 1e6,
          median(route) / alone);
    }
    System.out.println();
    for (CallSite site : sites.values()) {
      site.close();
    }
  }

  private double median(String route) {
    List<Long> sorted = new ArrayList<>(Objects.requireNonNull(nanos.get(route)));
    Collections.sort(sorted);
    return sorted.isEmpty() ? Double.NaN : sorted.get(sorted.size() / 2);
  }
}
