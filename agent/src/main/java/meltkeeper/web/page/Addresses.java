package meltkeeper.web.page;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;

/** Addresses of views, with names that may hold anything. */
public final class Addresses {

  private Addresses() {}

  /** Of a printer's view. */
  public static String printer(String name) {
    return "/printers/" + encoded(name);
  }

  /** Of a part's view. */
  public static String part(String id) {
    return "/parts/" + encoded(id);
  }

  /** A name as a path or a query may hold it. */
  public static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
  }

  /** A place within this page to go back to; the overview for anything else. */
  static String back(String told) {
    return told.startsWith("/")
            && !told.startsWith("//")
            && told.indexOf('\\') < 0
            && told.chars().noneMatch(Character::isISOControl)
        ? told
        : "/";
  }

  /** An address with one more word in its query. */
  static String with(String address, String name, String value) {
    return address + (address.indexOf('?') < 0 ? "?" : "&") + name + "=" + encoded(value);
  }

  /** An address without a word of its query. */
  static String without(String address, String name) {
    return address.replaceAll("[?&]" + name + "=[^&]*", "").replaceFirst("^([^?]*)&", "$1?");
  }
}
