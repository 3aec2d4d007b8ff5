package meltkeeper.store.sql;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What processes that are killed leave behind. */
class MachineCodeTest {

  @TempDir private Path folder;
  private Path home = Path.of("");
  private Path temp = Path.of("");

  @BeforeEach
  void makeFolders() throws IOException {
    home = Files.createDirectory(folder.resolve("home"));
    temp = Files.createDirectory(folder.resolve("temp"));
  }

  private void commitAndKill() throws IOException {
    String url = "jdbc:sqlite:" + folder.resolve("shop.db");
    List<String> java = List.of("-Duser.home=" + home, "-Djava.io.tmpdir=" + temp);
    try (Child child = Child.committing(url, 0, java)) {
      assertThat(child.nextCommit()).isPresent();
    }
  }

  private static List<Path> filesIn(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(Files::isRegularFile).toList();
    }
  }

  @Test
  void killedAgainAndAgain_leavesOneFileInTheCache_andNoneInTheTempFolder() throws IOException {
    for (int time = 0; time < 3; time++) {
      commitAndKill();
    }
    assertThat(filesIn(temp)).isEmpty();
    assertThat(filesIn(home)).hasSize(1).allMatch(file -> file.startsWith(home.resolve(".cache")));
  }

  @Test
  void codeTornByAPowerCut_isReplaced() throws IOException {
    commitAndKill();
    Path code = filesIn(home).get(0);
    byte[] whole = Files.readAllBytes(code);
    Files.write(code, new byte[whole.length / 2]);
    commitAndKill();
    assertThat(code).hasBinaryContent(whole);
    assertThat(filesIn(temp)).isEmpty();
  }

  @Test
  void userWithoutAFolder_isServedAllTheSame() throws IOException {
    Files.delete(home);
    Files.createFile(home);
    commitAndKill();
  }
}
