package meltkeeper.web.page;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * What surrounds every view.
 *
 * @param t the page's words
 * @param times as the shop reads them
 * @param place which of the main views this is, for the menu; empty for none
 * @param path of the view with its query, to come back to
 * @param news what was just done
 * @param warnings what is wrong with the agent itself
 * @param mayWrite true when whoever looks may tap
 * @param hasToken true when there is a token to be entered
 */
public record Frame(
    Texts t,
    Times times,
    String place,
    String path,
    Optional<News> news,
    List<String> warnings,
    boolean mayWrite,
    boolean hasToken) {

  /**
   * What was just done.
   *
   * @param id to take it back by; empty when it cannot be
   */
  public record News(Optional<String> id, String words, List<String> notes) {}

  /** One of the main views. */
  public record View(String address, String words, boolean current) {}

  private static final Map<String, String> VIEWS = views();

  private static Map<String, String> views() {
    Map<String, String> views = new LinkedHashMap<>();
    views.put("overview", "/");
    views.put("batch", "/batch");
    views.put("parts", "/parts");
    views.put("kinds", "/kinds");
    views.put("alerts", "/alerts");
    return views;
  }

  public Frame {
    warnings = List.copyOf(warnings);
  }

  /** The page's words. */
  public String say(String key, Object... with) {
    return t.say(key, with);
  }

  /** The main views, for the menu. */
  public List<View> menu() {
    return VIEWS.entrySet().stream()
        .map(
            view ->
                new View(
                    view.getValue(), say("menu." + view.getKey()), view.getKey().equals(place)))
        .toList();
  }

  /** The view's own address, as a query may hold it. */
  public String pathEncoded() {
    return Addresses.encoded(path);
  }

  /** The address of another stretch of this view's list. */
  public String stretch(int number) {
    return Addresses.with(Addresses.without(path, "stretch"), "stretch", "" + number);
  }

  /** A number to the tenth. */
  public String tenths(BigDecimal value) {
    return value.setScale(1, RoundingMode.HALF_UP).toPlainString();
  }

  /** A number to the tenth. */
  public String tenths(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }

  /** A number to the unit. */
  public String whole(double value) {
    return String.format(Locale.ROOT, "%.0f", value);
  }

  /** A share, small ones to the tenth of a percent. */
  public String percent(double share) {
    return String.format(Locale.ROOT, share < 0.0995 ? "%.1f %%" : "%.0f %%", 100 * share);
  }

  /** A mark for a form, so that it is done once. */
  public String mark() {
    return DoneBook.mark();
  }

  /** The address of a file that the page needs, changed when the file is. */
  public String asset(String name) {
    return Assets.address(name);
  }
}
