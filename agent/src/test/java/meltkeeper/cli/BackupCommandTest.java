package meltkeeper.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Backup and restore as a shop types them. */
class BackupCommandTest {

  @TempDir private Path shop;
  private String out = "";
  private String err = "";

  @BeforeEach
  void configure() throws IOException {
    Files.writeString(
        shop.resolve("meltkeeper.yaml"), "store: jdbc:sqlite:shop.db\nprinters: {}\n");
  }

  private int meltkeeper(String... args) {
    StringWriter written = new StringWriter();
    StringWriter complained = new StringWriter();
    String[] all = java.util.Arrays.copyOf(args, args.length + 2);
    all[args.length] = "--config";
    all[args.length + 1] = shop.resolve("meltkeeper.yaml").toString();
    int code = Main.run(new PrintWriter(written, true), new PrintWriter(complained, true), all);
    out = written.toString();
    err = complained.toString();
    return code;
  }

  @Test
  void partAddedAfterTheBackup_isGoneAfterTheRestore_andKeptAside() {
    String copy = shop.resolve("monday.db").toString();
    assertThat(meltkeeper("part", "add", "liner")).as(() -> err).isZero();
    assertThat(meltkeeper("backup", copy)).as(() -> err).isZero();
    assertThat(out).contains("monday.db is a whole and sound copy");
    assertThat(meltkeeper("part", "add", "nozzle")).as(() -> err).isZero();

    assertThat(meltkeeper("restore", copy)).as(() -> err).isZero();

    assertThat(out).contains("1 parts").contains("what was there before is kept: ");
    assertThat(meltkeeper("part", "list")).isZero();
    assertThat(out).contains("L-001").doesNotContain("N-001");
  }

  @Test
  void backupOverAFile_failsInWords() {
    assertThat(meltkeeper("part", "add", "liner")).isZero();
    assertThat(meltkeeper("backup", shop.resolve("shop.db").toString())).isEqualTo(1);
    assertThat(err).contains("name a new file");
  }
}
