package meltkeeper.demo;

import java.util.List;
import java.util.Optional;

/**
 * A part of the demo's shop that has a past on paper.
 *
 * @param ended jam, worn, precaution, inspection or still-fitted
 * @param hours hot, at {@code celsius}
 * @param printer that it is fitted on now; empty for one that ended
 */
public record PastPart(
    String id, String kind, String ended, double celsius, double hours, Optional<String> printer) {

  /** The shop's parts: those that ended, and those now fitted. */
  public static List<PastPart> ofTheShop() {
    return List.of(
        ended("L-001", "liner", "jam", 225, 472),
        ended("L-002", "liner", "precaution", 225, 410),
        ended("L-003", "liner", "jam", 237, 231),
        ended("L-004", "liner", "precaution", 225, 388),
        ended("L-005", "liner", "worn", 237, 287),
        ended("L-006", "liner", "jam", 225, 566),
        ended("N-001", "nozzle", "worn", 225, 1120),
        ended("N-002", "nozzle", "precaution", 237, 640),
        ended("N-003", "nozzle", "jam", 237, 705),
        fitted("L-011", "liner", 225, 318, "heron"),
        fitted("L-012", "liner", 225, 96, "ibis"),
        fitted("L-013", "liner", 237, 205, "egret"),
        fitted("L-014", "liner", 237, 262, "kestrel"),
        fitted("N-011", "nozzle", 225, 480, "heron"),
        fitted("N-012", "nozzle", 225, 96, "ibis"),
        fitted("N-013", "nozzle", 237, 830, "egret"),
        fitted("N-014", "nozzle", 237, 540, "kestrel"));
  }

  private static PastPart ended(
      String id, String kind, String ended, double celsius, double hours) {
    return new PastPart(id, kind, ended, celsius, hours, Optional.empty());
  }

  private static PastPart fitted(
      String id, String kind, double celsius, double hours, String printer) {
    return new PastPart(id, kind, "still-fitted", celsius, hours, Optional.of(printer));
  }
}
