package meltkeeper.protocol.mapping;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import meltkeeper.protocol.JobState;

/** What a printer's words mean: a word as written first, then the same in any case. */
final class Words {

  private static final Map<String, JobState> OUR_OWN =
      Arrays.stream(JobState.values())
          .collect(Collectors.toUnmodifiableMap(JobState::word, Function.identity()));

  private final Map<String, JobState> exact;
  private final TreeMap<String, JobState> anyCase = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);

  /** The words given, or our own when none are. */
  Words(Map<String, JobState> words) {
    exact = new HashMap<>(words.isEmpty() ? OUR_OWN : words);
    exact.keySet().stream().sorted().forEach(word -> anyCase.putIfAbsent(word, exact.get(word)));
  }

  Optional<JobState> state(String word) {
    JobState state = exact.get(word);
    return Optional.ofNullable(state != null ? state : anyCase.get(word));
  }

  /** The words known, for a person. */
  String allowed() {
    return exact.keySet().stream().sorted().collect(Collectors.joining(", "));
  }
}
