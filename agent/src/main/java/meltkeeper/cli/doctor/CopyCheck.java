package meltkeeper.cli.doctor;

import java.io.IOException;
import java.time.LocalDate;
import java.util.Optional;
import meltkeeper.cli.copies.CopyShelf;
import meltkeeper.config.CopySettings;

/**
 * Whether there is a copy of the store to go back to.
 *
 * @param agentRuns true when one should be made each day
 */
record CopyCheck(CopySettings settings, LocalDate today, boolean agentRuns) {

  private static final int OLD_DAYS = 2;

  Finding finding() {
    String about = "daily copies in " + settings.folder();
    if (settings.keep() == 0) {
      return Finding.weak(
          about, "none are made", "set backup: { keep: 7 }, or copy the store by other means");
    }
    try {
      Optional<LocalDate> newest =
          new CopyShelf(settings.folder(), settings.keep())
              .days().stream().filter(day -> !day.isAfter(today)).findFirst();
      if (newest.isEmpty()) {
        return Finding.well(about, "none yet; one is made ten minutes after a start");
      }
      boolean isOld = newest.get().isBefore(today.minusDays(OLD_DAYS));
      String found = "the newest is of " + newest.get();
      return isOld && agentRuns
          ? Finding.weak(about, found, "see the log for \"no daily copy of the store\"")
          : Finding.well(about, found);
    } catch (IOException e) {
      return Finding.weak(about, e.toString(), "let this user read the folder");
    }
  }
}
