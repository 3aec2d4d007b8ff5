package meltkeeper.web.page;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import meltkeeper.desk.Undo;

/**
 * Remembers what was done by tap: to show it on the next page, to take it back, and so that a form
 * sent twice is done once. Kept in memory, the latest two hundred. Safe for any thread.
 */
final class DoneBook {

  private static final int REMEMBERED = 200;

  private final Map<String, Done> done =
      new LinkedHashMap<>() {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Done> eldest) {
          return size() > REMEMBERED;
        }
      };

  /**
   * Something that was done.
   *
   * @param id by which the next page asks for it
   * @param words what was done
   * @param notes what the shop should know or do next
   * @param undo what takes it back; empty when nothing does
   */
  record Done(String id, String words, List<String> notes, Optional<Undo> undo) {

    Done {
      notes = List.copyOf(notes);
    }
  }

  /** What an act brought. */
  record Outcome(String words, List<String> notes, Optional<Undo> undo) {}

  /** A mark for a form. */
  static String mark() {
    return UUID.randomUUID().toString();
  }

  /** Does what a form asks, unless a form with this mark was done before. */
  synchronized Done once(String mark, Supplier<Outcome> act) {
    Done before = done.get(mark);
    if (before != null) {
      return before;
    }
    Outcome outcome = act.get();
    Done now = new Done(mark, outcome.words(), outcome.notes(), outcome.undo());
    done.put(mark, now);
    return now;
  }

  synchronized Optional<Done> find(String id) {
    return Optional.ofNullable(done.get(id));
  }
}
