package meltkeeper.protocol.motion;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import meltkeeper.protocol.Fault;

/**
 * What a file was reckoned to be.
 *
 * @param seconds from its first line to its last, at most {@link JobEstimator#LONGEST_SECONDS}
 * @param layingSeconds in which filament is laid
 * @param hottestCelsius the highest target of any hot end; 0 when the file sets none
 * @param filamentMillimetres fed by hot end, net of retractions
 * @param moves that it makes
 * @param faults the first lines that were left out, each with its number as the place
 * @param notes on what was assumed or left out, in plain words
 */
public record JobEstimate(
    double seconds,
    double layingSeconds,
    double hottestCelsius,
    Map<Integer, Double> filamentMillimetres,
    long moves,
    List<Fault> faults,
    List<String> notes) {

  public JobEstimate {
    filamentMillimetres = new TreeMap<>(filamentMillimetres);
    faults = List.copyOf(faults);
    notes = List.copyOf(notes);
  }
}
