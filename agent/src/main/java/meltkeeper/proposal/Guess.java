package meltkeeper.proposal;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import meltkeeper.protocol.Signal;

/**
 * What one place may tell.
 *
 * @param certainty the higher the likelier; of two places for one signal the likelier is taken
 * @param scale by which its numbers count
 * @param words what its words mean, for the state of the job alone
 */
record Guess(Signal signal, int certainty, double scale, Map<String, String> words) {

  private static final Set<String> OTHER_HEAT =
      Set.of("bed", "plate", "chamber", "ambient", "room", "board", "enclosure", "heatbreak");
  private static final Set<String> HOT_END =
      Set.of("hotend", "hot", "nozzle", "extruder", "tool", "tool0", "end", "e0");
  private static final Set<String> NOW =
      Set.of("now", "actual", "current", "temp", "temperature", "celsius", "measured", "is", "t");
  private static final Set<String> TARGET = Set.of("target", "set", "setpoint", "goal", "wanted");
  private static final Set<String> DUTY =
      Set.of("duty", "pwm", "power", "heater", "output", "heating");
  private static final Set<String> FEED =
      Set.of("feed", "filament", "extruded", "extrusion", "e", "fed");
  private static final Set<String> ASKED =
      Set.of("asked", "commanded", "requested", "wanted", "total", "used", "extruded", "length");
  private static final Set<String> SEEN = Set.of("seen", "measured", "encoder", "sensor", "real");
  private static final Set<String> LOAD = Set.of("load", "force", "torque", "effort");

  /** The likeliest meaning of a place, by the words of topic and pointer and by what it did. */
  static Optional<Guess> of(String topic, String pointer, Track track) {
    List<String> path = wordsOf(topic + "/" + pointer);
    List<String> own = wordsOf(pointer.isEmpty() ? lastLevel(topic) : pointer);
    return track.isNumber() ? number(path, own, track) : text(own, track);
  }

  private static Optional<Guess> number(List<String> path, List<String> own, Track track) {
    boolean otherHeat = any(path, OTHER_HEAT);
    int hotEnd = any(path, HOT_END) ? 2 : 0;
    String last = own.isEmpty() ? "" : own.get(own.size() - 1);
    boolean warm = track.least() >= -50 && track.most() <= 600;
    if (any(own, Set.of("fan"))) {
      return fraction(Signal.FAN, 2, track);
    }
    if (any(own, Set.of("progress", "done", "percent", "completion"))) {
      return fraction(Signal.PROGRESS, 2, track);
    }
    if (any(own, DUTY)
        && !otherHeat
        && track.least() >= 0
        && !NOW.contains(last)
        && !TARGET.contains(last)) {
      return fraction(Signal.HEATER_DUTY, 1 + hotEnd, track);
    }
    if (any(path, LOAD) && any(path, FEED)) {
      return plain(Signal.FEED_LOAD, 2);
    }
    if (any(path, FEED) && any(own, SEEN) && track.least() >= 0) {
      return plain(Signal.FILAMENT_MEASURED, track.grows() ? 3 : 1);
    }
    if (any(path, FEED) && any(own, ASKED) && track.least() >= 0) {
      return plain(Signal.FILAMENT_COMMANDED, track.grows() ? 3 : 1);
    }
    if (warm && !otherHeat && any(own, TARGET)) {
      return plain(Signal.HOT_END_TARGET, 1 + hotEnd);
    }
    if (warm && !otherHeat && any(own, NOW)) {
      return plain(Signal.HOT_END_TEMPERATURE, (track.moves() ? 2 : 1) + hotEnd);
    }
    return Optional.empty();
  }

  private static Optional<Guess> text(List<String> own, Track track) {
    if (any(own, Set.of("state", "status", "phase"))) {
      return Optional.of(new Guess(Signal.JOB_STATE, 2, 1, states(track.words())));
    }
    if (any(own, Set.of("material", "plastic"))) {
      return plain(Signal.MATERIAL, 2);
    }
    if (any(own, Set.of("job", "file", "filename")) && !any(own, Set.of("path"))) {
      return plain(Signal.JOB, 2);
    }
    return Optional.empty();
  }

  private static Map<String, String> states(Set<String> words) {
    Map<String, String> states = new TreeMap<>();
    for (String word : words) {
      String lower = word.toLowerCase(Locale.ROOT);
      boolean rests =
          lower.matches(
              ".*(idle|rest|ready|off|done|finish|complete|stop|cancel|standby|operational).*");
      boolean holds = lower.matches(".*(pause|hold|wait).*");
      states.put(word, rests ? "idle" : holds ? "paused" : "printing");
    }
    return states;
  }

  /** The full scale is the least usual one that what was seen fits in. */
  private static Optional<Guess> fraction(Signal signal, int certainty, Track track) {
    for (double full : new double[] {1, 100, 127, 255}) {
      if (track.most() <= full) {
        return Optional.of(new Guess(signal, certainty, 1 / full, Map.of()));
      }
    }
    return Optional.empty();
  }

  private static Optional<Guess> plain(Signal signal, int certainty) {
    return Optional.of(new Guess(signal, certainty, 1, Map.of()));
  }

  private static boolean any(List<String> words, Set<String> of) {
    return words.stream().anyMatch(of::contains);
  }

  private static String lastLevel(String topic) {
    return topic.substring(topic.lastIndexOf('/') + 1);
  }

  /** The words of a name, whether written-so, written_so or writtenSo. */
  private static List<String> wordsOf(String name) {
    return Arrays.stream(name.replaceAll("([a-z])([A-Z])", "$1/$2").split("[^A-Za-z0-9]+"))
        .filter(word -> !word.isEmpty())
        .map(word -> word.toLowerCase(Locale.ROOT))
        .collect(Collectors.toList());
  }
}
