package meltkeeper.protocol;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What a printer does with its job. */
public enum JobState {
  PRINTING,
  PAUSED,
  IDLE;

  /**
   * The word used in configurations and answers: {@code printing}, {@code paused}, {@code idle}.
   */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The state of that word, in any case. */
  public static Optional<JobState> ofWord(String word) {
    return Arrays.stream(values()).filter(s -> s.word().equalsIgnoreCase(word)).findFirst();
  }
}
