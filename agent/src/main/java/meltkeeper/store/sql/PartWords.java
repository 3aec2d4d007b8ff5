package meltkeeper.store.sql;

import java.sql.SQLDataException;
import java.util.Arrays;
import java.util.Locale;
import meltkeeper.part.Because;
import meltkeeper.part.Ending;

/** The words that stand for reasons and endings in the tables of parts. */
final class PartWords {

  private PartWords() {}

  static String of(Ending ending) {
    if (ending instanceof Ending.Failed failed) {
      return failed.because().word();
    }
    if (ending instanceof Ending.Censored censored) {
      return word(censored.why());
    }
    throw new IllegalArgumentException("the store knows no ending such as " + ending);
  }

  static Ending ending(String word) throws SQLDataException {
    for (Ending.Why why : Ending.Why.values()) {
      if (word(why).equals(word)) {
        return new Ending.Censored(why);
      }
    }
    return new Ending.Failed(because(word));
  }

  static Because because(String word) throws SQLDataException {
    return Arrays.stream(Because.values())
        .filter(because -> because.word().equals(word))
        .findFirst()
        .orElseThrow(() -> new SQLDataException("unknown ending of a part: " + word));
  }

  private static String word(Ending.Why why) {
    return why.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
