package meltkeeper.testing;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A file of the project that is made from the code, whole or between marks. A test holds it
 * current; with {@code -Dgenerate=true} it writes the file instead, for a person to look at and
 * commit.
 *
 * @param content as it should be
 */
public record Generated(Path path, String content) {

  private static final String SWITCH = "generate";

  /** A file with sections that are made, and text between them that is not. */
  public static Generated file(Path path) throws IOException {
    return new Generated(path, Files.readString(path));
  }

  /** The same with one section as it should be. */
  public Generated withSection(String name, String section) {
    String begin = "<!-- from the code: " + name + " -->\n";
    int from = content.indexOf(begin);
    int to = content.indexOf("<!-- end -->", from);
    assertThat(from).as("%s has the mark %s", path, begin.strip()).isNotNegative();
    assertThat(to).as("%s ends its section %s", path, name).isNotNegative();
    return new Generated(
        path, content.substring(0, from + begin.length()) + section + content.substring(to));
  }

  /** Holds the file to its content, or writes it. */
  public void check() throws IOException {
    if (Boolean.getBoolean(SWITCH)) {
      Files.createDirectories(path.toAbsolutePath().getParent());
      Files.writeString(path, content);
    }
    assertThat(path)
        .as("%s is not current; write it anew with -D%s=true and look at it", path, SWITCH)
        .usingCharset("UTF-8")
        .hasContent(content);
  }
}
