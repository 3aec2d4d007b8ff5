package meltkeeper.part;

import java.util.Optional;
import java.util.regex.Pattern;
import meltkeeper.protocol.Fault;

/** The rule for names that a shop gives to its parts, kinds and variants. */
public final class Names {

  private static final Pattern NAME = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N}._-]{0,39}");

  /** The rule in words. */
  public static final String ALLOWED =
      "1 to 40 letters, digits, dots, dashes and underscores, beginning with a letter or digit";

  private Names() {}

  /** The fault of a name that breaks the rule. */
  public static Optional<Fault> fault(String key, String name) {
    return NAME.matcher(name).matches()
        ? Optional.empty()
        : Optional.of(Fault.of(key, name, ALLOWED));
  }

  /** The name itself. */
  static String checked(String key, String name) {
    fault(key, name)
        .ifPresent(
            f -> {
              throw new IllegalArgumentException(f.toString());
            });
    return name;
  }
}
