package meltkeeper.protocol.gcode;

import java.nio.charset.StandardCharsets;
import java.util.Random;

/** Bytes as a bad wire gives them: pieces of real lines, cut, mixed and spoilt. */
final class Noise {

  private static final String[] PIECES = {
    "ok",
    "ok ",
    " T:214.9",
    " /215.0",
    " T0:214.9 /215.0",
    " T1:25.0 /0.0",
    " B:60.0 /60.0",
    " @:54",
    " B@:20",
    " @1:3",
    "T:nan",
    "T:",
    "/",
    " E:0",
    " W:?",
    "busy: processing",
    "echo:",
    "Error:",
    "!!",
    "Resend: 12",
    "rs 7",
    "// action:pause",
    "X:1.00 Y:2.00 Z:0.30 E:4.56",
    " Count X:80",
    "SD printing byte 12/99",
    "Not SD printing",
    "start",
    "wait",
    "\n",
    "\n",
    "\n",
    "\r\n",
    "N12 ",
    "G1 X1.5 E+.5",
    "G92 E0",
    "M104 S200",
    "*57",
    "; words",
    "(words)",
    "(",
    ")",
    "M117 words",
    "M83",
    "G91",
    "T1",
    "Unknown command: \"M155 S2\"",
    "-",
    ".",
    "9",
    "#3=1",
    "[1]"
  };

  private Noise() {}

  static byte[] bytes(Random random, int length) {
    StringBuilder text = new StringBuilder(length + 40);
    while (text.length() < length) {
      if (random.nextInt(5) == 0) {
        text.append((char) random.nextInt(256));
      } else {
        String piece = PIECES[random.nextInt(PIECES.length)];
        text.append(piece, 0, random.nextInt(6) == 0 ? piece.length() / 2 : piece.length());
      }
    }
    return text.toString().getBytes(StandardCharsets.ISO_8859_1);
  }
}
