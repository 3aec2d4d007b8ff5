package meltkeeper.outlook;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import meltkeeper.desk.RefusedException;
import meltkeeper.part.Exposure;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.gcode.LineSplitter;
import meltkeeper.protocol.motion.JobEstimate;
import meltkeeper.protocol.motion.JobEstimator;
import meltkeeper.protocol.motion.MotionLimits;

/** Makes a batch of a G-code file's lines. Not safe for use by several threads. */
public final class GcodeBatch {

  private static final int CHUNK_BYTES = 1 << 16;

  private final String name;
  private final ToDoubleFunction<Integer> hotAboveCelsius;
  private final JobEstimator estimator;
  private final Map<Integer, Map<Integer, double[]>> bands = new HashMap<>();

  /**
   * A batch to be read.
   *
   * @param name of the file, for whoever reads the answer
   * @param hotAboveCelsius the threshold of each hot end
   */
  public GcodeBatch(String name, MotionLimits limits, ToDoubleFunction<Integer> hotAboveCelsius) {
    this.name = name;
    this.hotAboveCelsius = hotAboveCelsius;
    this.estimator = new JobEstimator(limits, this::heat);
  }

  /**
   * Reads a whole batch, chunk by chunk, however long it is.
   *
   * @throws IOException when the stream fails
   * @throws RefusedException when the lines make no batch
   */
  public Batch read(InputStream in) throws IOException {
    LineSplitter splitter = new LineSplitter();
    byte[] chunk = new byte[CHUNK_BYTES];
    for (int read = in.read(chunk); read >= 0; read = in.read(chunk)) {
      splitter.feed(chunk, 0, read, line -> accept(line, splitter.lineNumber()));
    }
    splitter.feed(new byte[] {'\n'}, line -> accept(line, splitter.lineNumber()));
    return finish();
  }

  /** Takes a line and its number, counted from 1. */
  public void accept(Payload line, long number) {
    estimator.accept(line, number);
  }

  /**
   * The whole batch.
   *
   * @throws RefusedException when the lines make no batch
   */
  public Batch finish() {
    JobEstimate estimate = estimator.finish();
    if (estimate.moves() == 0) {
      throw refused("no move in it", "a file with G0 or G1 lines");
    }
    if (!(estimate.seconds() < JobEstimator.LONGEST_SECONDS)) {
      throw refused(
          "10000 h or more",
          "a shorter job; look for a feed rate that is too slow or a dwell that is too long");
    }
    if (!(estimate.hottestCelsius() > 0)) {
      throw refused(
          "no temperature in it",
          "a file that sets the hot end's temperature by M104 or M109; or give --hours and"
              + " --temperature");
    }
    Map<Integer, Exposure> hot = new TreeMap<>();
    bands.forEach((hotEnd, byBand) -> hot.put(hotEnd, exposure(byBand)));
    List<String> notes = new ArrayList<>();
    notes.add(
        String.format(
            java.util.Locale.ROOT,
            "%s was reckoned to take %s, %s of it laying filament, up to %.0f °C",
            name,
            RiskDesk.hours(estimate.seconds() / 3600),
            RiskDesk.hours(estimate.layingSeconds() / 3600),
            estimate.hottestCelsius()));
    estimate.notes().forEach(note -> notes.add(name + ": " + note));
    return new Batch(hot, estimate.seconds() / 3600, estimate.hottestCelsius(), notes);
  }

  private RefusedException refused(String found, String allowed) {
    return new RefusedException(List.of(Fault.of(name, found, allowed)));
  }

  /** Gives each band its share of a straight line in temperature, the part above the threshold. */
  private void heat(int hotEnd, double from, double until, double seconds) {
    double low = Math.min(from, until);
    double high = Math.max(from, until);
    double above = hotAboveCelsius.applyAsDouble(hotEnd);
    if (!(high > above)) {
      return;
    }
    Map<Integer, double[]> byBand = bands.computeIfAbsent(hotEnd, h -> new TreeMap<>());
    double begin = Math.max(low, above);
    if (high == low) {
      add(byBand, Exposure.bandOf(low), seconds, low);
      return;
    }
    double perKelvin = seconds / (high - low);
    for (int band = Exposure.bandOf(begin); band < high; band += Exposure.BAND_CELSIUS) {
      double first = Math.max(begin, band);
      double last = Math.min(high, band + Exposure.BAND_CELSIUS);
      add(byBand, band, perKelvin * (last - first), (first + last) / 2);
    }
  }

  private static void add(Map<Integer, double[]> byBand, int band, double seconds, double mean) {
    double[] sums = byBand.computeIfAbsent(band, b -> new double[2]);
    sums[0] += seconds;
    sums[1] += seconds * mean;
  }

  private static Exposure exposure(Map<Integer, double[]> byBand) {
    TreeMap<Integer, Exposure.Heat> heats = new TreeMap<>();
    byBand.forEach(
        (band, sums) ->
            heats.put(
                band, new Exposure.Heat(Math.round(sums[0] * 1e9), Math.round(sums[1] * 1e6))));
    return new Exposure(heats);
  }
}
