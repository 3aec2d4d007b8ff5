package meltkeeper.desk;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.List;

/**
 * What an act did.
 *
 * @param done in words
 * @param part as it stands now
 * @param shared new edges at which hours are shared in proportion to time
 * @param notes what the shop should know or do next
 * @param undo what takes it back
 */
public record PartChange(
    String done,
    PartAnswer part,
    List<SharedEdge> shared,
    List<String> notes,
    @JsonIgnore Undo undo) {

  public PartChange {
    shared = List.copyOf(shared);
    notes = List.copyOf(notes);
  }
}
