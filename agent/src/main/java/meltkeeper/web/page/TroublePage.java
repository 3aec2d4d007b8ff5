package meltkeeper.web.page;

import java.util.List;

/**
 * Something that did not work.
 *
 * @param words what is wrong, each with its remedy
 * @param back where to go on
 */
public record TroublePage(int status, List<String> words, String back) {

  public TroublePage {
    words = List.copyOf(words);
  }
}
