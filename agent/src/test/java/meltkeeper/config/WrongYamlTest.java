package meltkeeper.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Texts that are no configuration as a whole: one fault each, in plain words. */
class WrongYamlTest {

  private static final String EMPTY =
      "1: found \"an empty file\"; allowed: at least the section printers; docs/configure.md begins"
          + " with an example";

  static Stream<Arguments> texts() {
    return Stream.of(
        arguments("", EMPTY),
        arguments("# later\n", EMPTY),
        arguments(
            "http: {}\n",
            "1: printers: found \"nothing\"; allowed: a section; add the key printers"),
        arguments(
            "printers:\n",
            "1: printers: found \"nothing\"; allowed: printers by name, or {} while there is none;"
                + " add one below its name"),
        arguments(
            "- heron\n",
            "1: found \"a list\"; allowed: a section: keys, each with a colon and a value; begin"
                + " with printers: as docs/configure.md does"),
        arguments(
            "printers:\n\theron: {}\n",
            "2: found \"heron: …\"; allowed: spaces alone before a key; replace the tab by spaces"),
        arguments(
            "printers:\n  heron:\n    from: { tcp: 192.0.2.7:8899 }\n   hot-end: {}\n",
            "4: found \"hot-end: …\"; allowed: keys of one section below each other; indent this"
                + " line like its neighbours (it began in line 2)"),
        arguments(
            "printers:\n  heron: { from: { tcp: 192.0.2.7:8899 }\ncosts: {}\n",
            "3: found \"costs: …\"; allowed: a comma between entries and a closing bracket after"
                + " the last; close the bracket or add the comma (it began in line 2)"),
        arguments(
            "printers:\n  heron: { from: \"abc\n",
            "3: found \"the end of the file\"; allowed: a closing quote for each opening one; close"
                + " the quote (it began in line 2)"),
        arguments(
            "printers:\n  heron: from: here\n",
            "2: found \"heron: …\"; allowed: one key and its value; check that the line before is"
                + " complete, and quote a value that holds \": \""),
        arguments(
            "printers: *heron\n",
            "1: found \"printers: …\"; allowed: a name after * that an & has given above; name it"
                + " with & first"),
        arguments(
            "zone: @home\n",
            "1: found \"zone: …\"; allowed: a value that begins with no special sign; put the"
                + " value in quotes"),
        arguments(
            "printers: {}\n---\nprinters: {}\n",
            "2: found \"---\"; allowed: one document; remove the line --- and what follows (it"
                + " began in line 1)"),
        arguments(
            "printers:\n  heron: \u0007\n",
            "2: found \"the character U+0007\"; allowed: characters that can be printed; remove"
                + " it, and save the file as UTF-8"));
  }

  @ParameterizedTest
  @MethodSource("texts")
  void wrongText_read_givesOneFaultInPlainWords(String text, String fault) {
    assertThat(Shop.words(text)).isEqualTo("meltkeeper.yaml:" + fault);
  }
}
