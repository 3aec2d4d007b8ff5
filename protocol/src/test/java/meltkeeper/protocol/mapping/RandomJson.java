package meltkeeper.protocol.mapping;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Small documents and pointers from few keys, so that they often meet, and keys come twice. */
final class RandomJson {

  private static final String[] KEYS = {"a", "b", "", "0", "1", "01", "-", "a/b", "m~n"};
  private static final String[] SCALARS = {
    "1", "-2.5", "1e3", "12345678901234567890", "\"x\"", "\"\"", "\"é\\n\"", "true", "false", "null"
  };

  private RandomJson() {}

  static String document(Random random) {
    return value(random, 4);
  }

  static JsonPath path(Random random) {
    List<String> tokens = new ArrayList<>();
    for (int i = random.nextInt(4); i > 0; i--) {
      tokens.add(KEYS[random.nextInt(KEYS.length)]);
    }
    return new JsonPath(tokens);
  }

  private static String value(Random random, int depth) {
    int kind = depth == 0 ? 0 : random.nextInt(3);
    if (kind == 0) {
      return SCALARS[random.nextInt(SCALARS.length)];
    }
    List<String> members = new ArrayList<>();
    for (int i = random.nextInt(5); i > 0; i--) {
      String key = kind == 1 ? "\"" + KEYS[random.nextInt(KEYS.length)] + "\" : " : "";
      members.add(key + value(random, depth - 1));
    }
    String inside = String.join(" ,", members);
    return kind == 1 ? "{" + inside + "}" : "[" + inside + "]";
  }
}
