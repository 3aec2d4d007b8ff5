package meltkeeper.config;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import meltkeeper.protocol.Fault;

/**
 * What a value must look like.
 *
 * @param <T> what it is read into
 * @param allowed in words
 * @param check the fault of a text, without place and key; empty when nothing is wrong
 * @param reader of a text without fault
 */
record Form<T>(
    String allowed, Function<String, Optional<Fault>> check, Function<String, T> reader) {

  /** A form whose parser answers empty for what is not allowed. */
  static <T> Form<T> of(String allowed, String mend, Function<String, Optional<T>> parser) {
    return new Form<>(
        allowed,
        text ->
            parser.apply(text).isPresent()
                ? Optional.empty()
                : Optional.of(Fault.of("", text, allowed, mend)),
        text -> parser.apply(text).orElseThrow());
  }

  /** One of a few words. */
  static <E extends Enum<E>> Form<E> choice(Class<E> type, Function<E, String> label) {
    String words =
        Arrays.stream(type.getEnumConstants()).map(label).collect(Collectors.joining(" or "));
    return of(
        words,
        "",
        text ->
            Arrays.stream(type.getEnumConstants())
                .filter(constant -> label.apply(constant).equals(text))
                .findFirst());
  }

  /** A section with keys of its own, or a list; never read as a text. */
  static Form<Void> section(String allowed) {
    return of(allowed, "", text -> Optional.empty());
  }

  /**
   * The value of a text.
   *
   * @throws java.util.NoSuchElementException or what the reader throws, for a text with a fault
   */
  T read(String text) {
    return reader.apply(text);
  }
}
