package meltkeeper.store;

import meltkeeper.protocol.HotEnd;

/** Subjects as one text. A printer's name may hold spaces, but no slash; a part's id neither. */
final class SubjectText {

  private SubjectText() {}

  static String of(HotEnd hotEnd) {
    return hotEnd.printer() + "/" + hotEnd.index();
  }

  static Subject read(String written) {
    int space = written.indexOf(' ');
    String rest = written.substring(space + 1);
    return switch (space < 0 ? written : written.substring(0, space)) {
      case "agent" -> new Subject.OfAgent();
      case "printer" -> new Subject.OfPrinter(rest);
      case "hot-end" -> new Subject.OfHotEnd(hotEnd(rest));
      case "part" ->
          new Subject.OfPart(
              rest.substring(0, rest.indexOf(' ')), hotEnd(rest.substring(rest.indexOf(' ') + 1)));
      default -> throw new IllegalArgumentException("no subject is written as " + written);
    };
  }

  private static HotEnd hotEnd(String text) {
    int slash = text.lastIndexOf('/');
    return new HotEnd(text.substring(0, slash), Integer.parseInt(text.substring(slash + 1)));
  }
}
