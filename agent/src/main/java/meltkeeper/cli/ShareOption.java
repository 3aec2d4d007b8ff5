package meltkeeper.cli;

import java.util.List;
import meltkeeper.protocol.Fault;

/** Reads shares and spans of days as a person writes them. */
final class ShareOption {

  private static final int MOST_DAYS = 3650;

  private ShareOption() {}

  /**
   * A share from {@code 5%} or {@code 0.05}, above 0 and below 1.
   *
   * @throws FaultsException for anything else
   */
  static double share(String option, String text) {
    String plain = text.strip();
    boolean percent = plain.endsWith("%");
    try {
      double number = Double.parseDouble(percent ? plain.substring(0, plain.length() - 1) : plain);
      double share = percent ? number / 100 : number;
      if (share > 0 && share < 1) {
        return share;
      }
    } catch (NumberFormatException e) {
      throw wrong(option, text, "a share such as 5% or 0.05");
    }
    throw wrong(option, text, "a share above 0% and below 100%, such as 5% or 0.05");
  }

  /**
   * Days from {@code 60d} or {@code 60}.
   *
   * @throws FaultsException for anything else
   */
  static int days(String option, String text) {
    String plain = text.strip();
    String number = plain.endsWith("d") ? plain.substring(0, plain.length() - 1) : plain;
    if (number.matches("[0-9]{1,4}")) {
      int days = Integer.parseInt(number);
      if (days >= 1 && days <= MOST_DAYS) {
        return days;
      }
    }
    throw wrong(option, text, "whole days, 1d to " + MOST_DAYS + "d");
  }

  private static FaultsException wrong(String option, String text, String allowed) {
    return new FaultsException(List.of(Fault.of(option, text, allowed)));
  }
}
