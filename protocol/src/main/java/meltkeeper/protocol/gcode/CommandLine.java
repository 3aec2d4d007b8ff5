package meltkeeper.protocol.gcode;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Function;
import java.util.stream.Collectors;
import meltkeeper.protocol.Rejected;

/**
 * One line that commands a printer, on a wire or in a file.
 *
 * <p>Its form is that of RS274/NGC (Kramer, Proctor, Messina 2000, NISTIR 6556, section 3.3), with
 * what the RepRap dialect adds (common practice, no source): comments behind a semicolon, checksums
 * behind an asterisk, letters without a number, texts behind some M codes. Parameters and
 * expressions are refused; no filament printer evaluates them.
 *
 * <p>Immutable. {@link CommandScan#of} makes it; {@link #toString} writes it so that reading it
 * again gives an equal one.
 *
 * @param lineNumber the N word in front, -1 or more
 * @param isBlockDelete true when a slash stands in front: a machine with that switch on skips it
 * @param words in the order written, which means nothing (section 3.3.6); without the N word
 * @param text what stands behind an M code that takes a text; empty otherwise
 */
public record CommandLine(
    OptionalLong lineNumber, boolean isBlockDelete, List<Word> words, String text)
    implements CommandScan {

  public CommandLine {
    words = List.copyOf(words);
  }

  /** True for a line without a command: blank, or a comment alone. */
  public boolean isEmpty() {
    return words.isEmpty();
  }

  /** True when the letter stands on the line, with or without a number. */
  public boolean has(char letter) {
    for (Word word : words) {
      if (word.letter() == letter) {
        return true;
      }
    }
    return false;
  }

  /** True when the line gives this command: {@code calls('G', 92)}, which G92.1 is not. */
  public boolean calls(char letter, int code) {
    for (Word word : words) {
      if (word.letter() == letter && word.number().isPresent() && word.tenths() == code * 10) {
        return true;
      }
    }
    return false;
  }

  /** The number behind a letter other than G and M, in the units of the line. */
  public OptionalDouble number(char letter) {
    for (Word word : words) {
      if (word.letter() == letter) {
        return word.number();
      }
    }
    return OptionalDouble.empty();
  }

  @Override
  public <R> R fold(Function<CommandLine, R> line, Function<Rejected, R> refused) {
    return line.apply(this);
  }

  /** The line without comments and checksum, one blank between words. */
  @Override
  public String toString() {
    String numbered = lineNumber.isPresent() ? "N" + lineNumber.getAsLong() + " " : "";
    String written = words.stream().map(Word::toString).collect(Collectors.joining(" "));
    return ((isBlockDelete ? "/" : "") + numbered + written + " " + text).strip();
  }
}
