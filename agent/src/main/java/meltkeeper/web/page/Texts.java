package meltkeeper.web.page;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** The page's own words, from one bundle, so that it can be translated in one place. */
public final class Texts {

  /** English. */
  public static final Texts ENGLISH = new Texts();

  static final String BUNDLE = "meltkeeper.web.page.texts";

  private final ResourceBundle bundle = ResourceBundle.getBundle(BUNDLE, Locale.ENGLISH);

  private Texts() {}

  /**
   * The words of a key, with what they speak of put in.
   *
   * @throws java.util.MissingResourceException for a key that is not in the bundle
   */
  public String say(String key, Object... with) {
    return new MessageFormat(bundle.getString(key), Locale.ENGLISH).format(with);
  }
}
