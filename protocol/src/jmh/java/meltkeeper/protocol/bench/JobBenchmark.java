package meltkeeper.protocol.bench;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meltkeeper.protocol.gcode.CommandScan;
import meltkeeper.protocol.gcode.LineSplitter;
import meltkeeper.protocol.motion.JobEstimate;
import meltkeeper.protocol.motion.JobEstimator;
import meltkeeper.protocol.motion.MotionLimits;
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
import org.openjdk.jmh.infra.Blackhole;

/** A line of a G-code file, reckoned; beside reading it alone, and a regular expression. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class JobBenchmark {

  private static final int LINES = 10_000;
  private static final Pattern WORD = Pattern.compile("([A-Z])(-?[0-9]*\\.?[0-9]+)");

  private final String text = text();
  private final byte[] file = text.getBytes(StandardCharsets.US_ASCII);

  /** A plate of round outlines in short moves, with a comment every fiftieth line. */
  private static String text() {
    StringBuilder lines = new StringBuilder("M109 S210\nM83\n");
    for (int i = 2; i < LINES; i++) {
      double angle = i * 0.05;
      lines.append(
          i % 50 == 0
              ? "; the next outline\n"
              : String.format(
                  Locale.ROOT,
                  "G1 X%.3f Y%.3f E%.5f\n",
                  100 + 20 * Math.cos(angle),
                  100 + 20 * Math.sin(angle),
                  0.0331));
    }
    return lines.toString();
  }

  /** Ours: bytes to time and heat. */
  @Benchmark
  @OperationsPerInvocation(LINES)
  public JobEstimate estimate() {
    LineSplitter splitter = new LineSplitter();
    JobEstimator estimator = new JobEstimator(MotionLimits.DEFAULT, (index, from, to, time) -> {});
    splitter.feed(file, line -> estimator.accept(line, splitter.lineNumber()));
    return estimator.finish();
  }

  /** Ours: bytes to the lines' words, nothing reckoned. */
  @Benchmark
  @OperationsPerInvocation(LINES)
  public void scan(Blackhole sink) {
    new LineSplitter().feed(file, line -> sink.consume(CommandScan.of(line)));
  }

  /** The baseline: each word by a regular expression, its number parsed; nothing reckoned. */
  @Benchmark
  @OperationsPerInvocation(LINES)
  public void regularExpression(Blackhole sink) {
    text.lines()
        .forEach(
            line -> {
              Matcher words = WORD.matcher(line);
              while (words.find()) {
                sink.consume(words.group(1));
                sink.consume(Double.parseDouble(words.group(2)));
              }
            });
  }
}
