package meltkeeper.protocol.bench;

import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meltkeeper.protocol.Arrival;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.gcode.GcodeDecoder;
import meltkeeper.protocol.gcode.Report;
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

/** One line of a printer's report, scanned and told as readings, beside a regular expression. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class ReportBenchmark {

  private static final Pattern FIELD =
      Pattern.compile("([A-Z]?@|[A-Z][0-9]*):(-?[0-9.]+)(?: */(-?[0-9.]+))?");

  private final Received received =
      Received.fresh(
          new Origin.Line("ibis", Origin.Direction.IN),
          Payload.of("ok T:214.9 /215.0 B:60.0 /60.0 @:54 B@:20"),
          Arrival.at(1));
  private final GcodeDecoder decoder = new GcodeDecoder("ibis");

  /** Ours: the line's values, checked. */
  @Benchmark
  public Report scan() {
    return Report.of(received.payload());
  }

  /** Ours: bytes to readings. */
  @Benchmark
  public void readings(Blackhole sink) {
    decoder.decode(received, new Sink(sink));
  }

  /** The baseline: each field by a regular expression, its numbers parsed; no reading. */
  @Benchmark
  public void regularExpression(Blackhole sink) {
    Matcher fields = FIELD.matcher(received.payload().text());
    while (fields.find()) {
      sink.consume(fields.group(1));
      sink.consume(Double.parseDouble(fields.group(2)));
      if (fields.group(3) != null) {
        sink.consume(Double.parseDouble(fields.group(3)));
      }
    }
  }
}
