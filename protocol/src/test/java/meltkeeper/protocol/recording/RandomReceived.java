package meltkeeper.protocol.recording;

import java.nio.charset.StandardCharsets;
import java.util.Random;
import meltkeeper.protocol.Arrival;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Received;

/** Messages and lines as a wire might bring them, most of them odd. */
final class RandomReceived {

  private static final String[] PIECES = {
    "{",
    "}",
    "[",
    "]",
    ":",
    ",",
    "\"",
    "\\",
    "\\u00",
    "1",
    "-0.5e3",
    "null",
    "true",
    " ",
    "\n",
    "\r\n",
    "\t",
    "\0",
    "é",
    "“",
    "\u2028",
    "😀",
    "{\"a\":1}",
    "[1,2]",
    "{\"a\":{\"b\":[]}}",
    "NaN"
  };

  private RandomReceived() {}

  static Received next(Random random) {
    Origin origin =
        random.nextBoolean()
            ? new Origin.Topic("shop", "plant/" + text(random) + "/status")
            : new Origin.Line(
                "ibis", random.nextBoolean() ? Origin.Direction.IN : Origin.Direction.OUT);
    long at = random.nextLong() >>> random.nextInt(1, 40);
    return new Received(
        origin,
        Payload.of(payload(random)),
        Arrival.at(at % 9_223_372_035_000_000_000L),
        random.nextInt(4) == 0);
  }

  private static byte[] payload(Random random) {
    return switch (random.nextInt(3)) {
      case 0 -> {
        byte[] bytes = new byte[random.nextInt(20)];
        random.nextBytes(bytes);
        yield bytes;
      }
      case 1 -> "[%s]".formatted(random.nextDouble()).getBytes(StandardCharsets.UTF_8);
      default -> text(random).getBytes(StandardCharsets.UTF_8);
    };
  }

  private static String text(Random random) {
    StringBuilder text = new StringBuilder();
    for (int i = random.nextInt(6); i > 0; i--) {
      text.append(PIECES[random.nextInt(PIECES.length)]);
    }
    return text.toString();
  }
}
