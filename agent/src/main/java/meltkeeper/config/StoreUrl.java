package meltkeeper.config;

import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Pattern;
import meltkeeper.protocol.Fault;

/** The rule for the store's URL. */
final class StoreUrl {

  static final Form<String> FORM =
      new Form<>("jdbc:sqlite: and the path of a file", StoreUrl::fault, text -> text);

  private static final String SQLITE = "jdbc:sqlite:";
  private static final String POSTGRESQL = "jdbc:postgresql:";

  /** A user before an @, a user or password among the parameters. */
  private static final Pattern SECRET =
      Pattern.compile("(?<=//)[^/]*@|(?<=[?&])[^=&]*pass[^=&]*=[^&]*", Pattern.CASE_INSENSITIVE);

  private StoreUrl() {}

  /** The URL with the path of its file made absolute from a folder. */
  static String resolved(String url, Path folder) {
    return SQLITE + file(url, folder);
  }

  /** The file of a URL without fault. */
  static Path file(String url, Path folder) {
    return folder.resolve(url.substring(SQLITE.length())).normalize();
  }

  private static Optional<Fault> fault(String text) {
    String shown = SECRET.matcher(text).replaceAll("(hidden)");
    if (text.startsWith(POSTGRESQL)) {
      return Optional.of(
          Fault.of("", shown, FORM.allowed(), "this version keeps its store in SQLite alone"));
    }
    String path = text.startsWith(SQLITE) ? text.substring(SQLITE.length()) : "";
    boolean named = !path.startsWith(":") && !path.startsWith("file:") && !path.contains("?");
    return named && Forms.pathOf(path).isPresent()
        ? Optional.empty()
        : Optional.of(Fault.of("", shown, FORM.allowed(), "write jdbc:sqlite:meltkeeper.db"));
  }
}
