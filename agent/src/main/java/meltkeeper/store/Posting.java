package meltkeeper.store;

import java.util.List;

/**
 * An alert and whom it calls.
 *
 * @param routes by name; none for history, which calls nobody
 */
public record Posting(Alert alert, List<String> routes) {

  public Posting {
    routes = routes.stream().distinct().sorted().toList();
  }
}
