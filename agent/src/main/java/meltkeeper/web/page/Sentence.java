package meltkeeper.web.page;

/** Makes sentences of words that are told in the middle of a line elsewhere. */
final class Sentence {

  private Sentence() {}

  /** The same words with a capital letter before and a full stop behind. */
  static String of(String words) {
    return words.isEmpty()
        ? words
        : Character.toUpperCase(words.charAt(0)) + words.substring(1) + ".";
  }
}
