package meltkeeper.part;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** Why a part was taken off. */
public enum Because {
  /** It jammed. */
  JAM(true),
  /** It was found worn out. */
  WORN(true),
  /** To be on the safe side. */
  PRECAUTION(false),
  /** To look at it. */
  INSPECTION(false);

  private final boolean failure;

  Because(boolean failure) {
    this.failure = failure;
  }

  /** True when the part had reached its end. */
  public boolean isFailure() {
    return failure;
  }

  /** The word used in commands and files. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The reason of that word. */
  public static Optional<Because> ofWord(String word) {
    return Arrays.stream(values()).filter(b -> b.word().equals(word)).findFirst();
  }
}
