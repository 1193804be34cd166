package spindlebook.log;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RawLinesTest {
  private static final int BLOCK = 1 << 16;

  @TempDir Path folder;

  @Test
  void lines_of_every_length_come_back_whole_wherever_a_block_ends() throws Exception {
    Random random = new Random(20261128);
    ByteArrayOutputStream file = new ByteArrayOutputStream();
    List<byte[]> written = new ArrayList<>();
    for (int i = 0; i < 200; i++) {
      int length =
          i % 40 == 0 ? BLOCK - 1 + random.nextInt(3) : i % 7 == 0 ? 0 : random.nextInt(3_000);
      byte[] line = new byte[length];
      random.nextBytes(line);
      for (int b = 0; b < length; b++) {
        line[b] = line[b] == '\n' ? (byte) 'x' : line[b];
      }
      written.add(line);
      file.writeBytes(line);
      if (i < 199) {
        file.write('\n');
      }
    }

    List<RawLines.Raw> read = read(file.toByteArray());

    assertEquals(written.size(), read.size());
    long start = 0;
    for (int i = 0; i < 200; i++) {
      RawLines.Raw line = read.get(i);
      assertArrayEquals(written.get(i), line.bytes());
      assertEquals(i + 1, line.number());
      assertEquals(start, line.start());
      assertEquals(i < 199, line.ended());
      assertEquals(false, line.tooLong());
      start += line.bytes().length + (line.ended() ? 1 : 0);
      assertEquals(start, line.end());
    }
  }

  @Test
  void of_a_line_too_long_only_its_beginning_is_held_and_the_next_is_whole() throws Exception {
    byte[] file = new byte[RawLines.LONGEST + BLOCK + 5];
    Arrays.fill(file, (byte) 'a');
    file[RawLines.LONGEST + BLOCK] = '\n';

    List<RawLines.Raw> read = read(file);

    assertEquals(2, read.size());
    assertTrue(read.get(0).tooLong());
    assertEquals(RawLines.LONGEST, read.get(0).bytes().length);
    assertEquals(RawLines.LONGEST + BLOCK + 1, read.get(0).end());
    assertEquals("aaaa", new String(read.get(1).bytes(), StandardCharsets.US_ASCII));
  }

  private List<RawLines.Raw> read(byte[] bytes) throws Exception {
    Path file = Files.write(folder.resolve("lines"), bytes);
    List<RawLines.Raw> all = new ArrayList<>();
    try (RawLines lines = new RawLines(file)) {
      for (RawLines.Raw raw = lines.next(); raw != null; raw = lines.next()) {
        all.add(raw);
      }
    }
    return all;
  }
}
