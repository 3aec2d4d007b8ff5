package meltkeeper.cli;

import java.util.List;

/** What to mind at a hot end. */
final class Cautions {

  /** For whoever swaps a part. */
  static final List<String> AT_A_SWAP =
      List.of("Hot metal burns: let it cool, or hold it with tools.");

  /** For whoever cleans a part. */
  static final List<String> AT_CLEANING =
      List.of(
          "Hot metal burns: let it cool, or hold it with tools.",
          "Wear eye protection for scraping and compressed air.");

  private Cautions() {}
}
