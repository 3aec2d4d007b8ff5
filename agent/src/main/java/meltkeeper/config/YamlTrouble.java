package meltkeeper.config;

import java.util.List;
import meltkeeper.protocol.Fault;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.reader.ReaderException;

/**
 * Why a text is no YAML, in plain words.
 *
 * @param line where it was noticed, counted from 1
 */
record YamlTrouble(int line, Fault fault) {

  /** Part of the parser's message, and what it means to a person. */
  private record Meaning(String message, String allowed, String mend) {}

  private static final List<Meaning> MEANINGS =
      List.of(
          new Meaning("TAB", "spaces alone before a key", "replace the tab by spaces"),
          new Meaning(
              "mapping values are not allowed",
              "one key and its value",
              "check that the line before is complete, and quote a value that holds \": \""),
          new Meaning(
              "expected <block end>",
              "keys of one section below each other",
              "indent this line like its neighbours"),
          new Meaning(
              "could not find expected ':'", "a colon and a space after a key", "write key: value"),
          new Meaning(
              "found unexpected end of stream",
              "a closing quote for each opening one",
              "close the quote"),
          new Meaning(
              "expected ',' or",
              "a comma between entries and a closing bracket after the last",
              "close the bracket or add the comma"),
          new Meaning(
              "undefined alias",
              "a name after * that an & has given above",
              "name it with & first"),
          new Meaning(
              "cannot start any token",
              "a value that begins with no special sign",
              "put the value in quotes"),
          new Meaning("single document", "one document", "remove the line --- and what follows"),
          new Meaning(
              "Number of aliases", "at most 200 uses of aliases for sections", "write them out"),
          new Meaning("Nesting Depth", "at most 20 sections inside each other", ""),
          new Meaning("Global tag", "values without a tag", "remove the sign ! and its word"));

  static YamlTrouble of(YAMLException e, String text) {
    int line = lineOf(e, text);
    String message = String.valueOf(e.getMessage());
    for (Meaning meaning : MEANINGS) {
      if (message.contains(meaning.message())) {
        return new YamlTrouble(
            line,
            Fault.of("", shown(line, text), meaning.allowed(), meaning.mend() + began(e, line)));
      }
    }
    return e instanceof ReaderException reader
        ? new YamlTrouble(
            line,
            Fault.of(
                "",
                String.format("the character U+%04X", reader.getCodePoint()),
                "characters that can be printed",
                "remove it, and save the file as UTF-8"))
        : new YamlTrouble(
            line, Fault.of("", shown(line, text), "YAML", "the parser says: " + problem(e)));
  }

  private static String began(YAMLException e, int line) {
    if (e instanceof MarkedYAMLException marked && marked.getContextMark() != null) {
      int first = marked.getContextMark().getLine() + 1;
      return first == line ? "" : " (it began in line " + first + ")";
    }
    return "";
  }

  private static String problem(YAMLException e) {
    String problem = e instanceof MarkedYAMLException marked ? marked.getProblem() : null;
    return problem == null ? String.valueOf(e.getMessage()) : problem;
  }

  private static int lineOf(YAMLException e, String text) {
    if (e instanceof MarkedYAMLException marked && marked.getProblemMark() != null) {
      return marked.getProblemMark().getLine() + 1;
    }
    if (e instanceof ReaderException reader) {
      int end = text.offsetByCodePoints(0, Math.min(reader.getPosition(), codePoints(text)));
      return 1 + (int) text.substring(0, end).chars().filter(c -> c == '\n').count();
    }
    return 1;
  }

  private static int codePoints(String text) {
    return text.codePointCount(0, text.length());
  }

  /** The line up to its colon: what stands behind may be a secret. */
  private static String shown(int line, String text) {
    List<String> lines = text.lines().toList();
    if (line > lines.size()) {
      return "the end of the file";
    }
    String whole = lines.get(line - 1).strip();
    int colon = whole.indexOf(':');
    return colon < 0 || colon == whole.length() - 1 ? whole : whole.substring(0, colon + 1) + " …";
  }
}
